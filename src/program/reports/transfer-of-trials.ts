import { recipeInForce } from '../../core/bonding/recipes-in-force.ts';
import { compareTrials } from '../../core/press-comparison/compare-trials.ts';
import type { ReportSection } from '../../core/report/ReportContent.ts';
import { transferSection } from '../../core/report/transfer-section.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import type { TemperatureUnit } from '../../core/text/units-text.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { OptionError } from '../options/OptionError.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { storedOutcome } from '../trials/stored-outcome.ts';
import type { GatheredTrial } from './GatheredTrial.ts';

export interface TransferOptions extends StoreOptions {
  readonly against?: string;
  readonly slower?: string;
  readonly faster?: string;
  readonly show: TemperatureUnit;
}

/** The trial set against a stored one of the same assembly on another press. `statedAt` is when the margins were stated. */
export function transferOfTrials(
  { outcome, job }: GatheredTrial,
  options: TransferOptions,
  statedAt: string,
): Promise<ReportSection> {
  return readFromStore(options, (store) => {
    const other = storedOutcome(store, options.against ?? '', {});
    if (job.assemblyName !== null && other.trial.assemblyName !== job.assemblyName) {
      throw new OptionError(
        `--against: that trial is of ${neutralise(other.trial.assemblyName)}, this one of ${neutralise(job.assemblyName)}`,
        'Compare presses with trials of one assembly',
      );
    }
    const recipe = recipeInForce(store.recipes(), job);
    const comparison = compareTrials({
      first: outcome.runs,
      second: other.runs,
      plan: planOf(options, statedAt),
      probePartS: 0,
      recipe,
    });
    const name = (press: string) => neutralise(press, { longest: 40 });
    const presses = { first: name(job.pressName ?? 'first'), second: name(other.trial.pressName) };
    return transferSection(comparison, presses, options.show);
  });
}

function planOf({ slower, faster }: TransferOptions, statedAt: string) {
  if (slower === undefined && faster === undefined) return null;
  if (slower === undefined || faster === undefined) {
    throw new OptionError(
      'report: came only one of --slower and --faster',
      'State both, for example --slower 3s --faster 5s',
    );
  }
  return { slowerS: parseDuration(slower, '--slower'), fasterS: parseDuration(faster, '--faster'), statedAt };
}
