import { neutralise } from '../../core/text/neutralise.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { analyseWarmUp } from '../../core/warm-up/analyse-warm-up.ts';
import { findHeatings, type Heating } from '../../core/warm-up/find-heatings.ts';
import type { WarmUp } from '../../core/warm-up/WarmUp.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';
import type { StoreOptions } from '../options/with-store.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { type OpenPlatens, openPlatens } from './open-platens.ts';
import { type WarmUpRuleOptions, warmUpRules } from './warm-up-rules.ts';

export interface AnalyseOptions extends WarmUpRuleOptions, SourceOptions, StoreOptions {
  readonly poweredAt?: string;
  /** Only this heating of a recording that holds several: 1, 2, … */
  readonly heating?: string;
}

/** One heating of a recording, analysed. */
export interface AnalysedHeating {
  /** `record` is the heating's own stretch. */
  readonly platens: OpenPlatens;
  readonly heating: Heating;
  readonly result: WarmUp;
  /** The name, with the heating's number where there are several. */
  readonly label: string;
}

/** Every heating of a recording by the options, or the one asked for. */
export async function analysePlatens(
  name: string,
  options: AnalyseOptions,
): Promise<readonly AnalysedHeating[]> {
  return analyseHeatings(await openPlatens(name, options), options);
}

export function analyseHeatings(opened: OpenPlatens, options: AnalyseOptions): readonly AnalysedHeating[] {
  const rules = warmUpRules(options, opened.head);
  const poweredAtS =
    options.poweredAt === undefined
      ? null
      : parseDuration(options.poweredAt, '--powered-at', { negative: true });
  const found = wanted(findHeatings(opened.record), opened.name, options);
  if (poweredAtS !== null && found.length > 1) {
    throw new OptionError(
      `${neutralise(opened.name)}: holds ${found.length} heatings; --powered-at is of one`,
      'Say which: --heating 1',
    );
  }
  return found.map((heating) => ({
    platens: { ...opened, record: heating.record },
    heating,
    result: analyseWarmUp(heating.record, rules, poweredAtS),
    label: heating.of === 1 ? opened.name : `${opened.name}, heating ${heating.number} of ${heating.of}`,
  }));
}

function wanted(
  all: readonly Heating[],
  name: string,
  { heating }: Pick<AnalyseOptions, 'heating'>,
): readonly Heating[] {
  if (heating === undefined) return all;
  const number = parseCount(heating, '--heating', { least: 1, most: 999 });
  const one = all[number - 1];
  if (one !== undefined) return [one];
  throw new OptionError(
    `--heating: ${neutralise(name)} holds ${all.length === 1 ? 'one heating' : `${all.length} heatings`}, came ${number}`,
    `Use 1${all.length === 1 ? '' : ` to ${all.length}`}, or leave --heating out for all`,
  );
}
