import type { Store } from '../../core/store/Store.ts';
import { MARGIN_TEXT } from '../../core/text/command-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { powerText } from '../../core/text/transfer-text.ts';
import { equivalencePower } from '../../core/transfer/equivalence-power.ts';
import { marginsKey } from '../../core/transfer/stored-plan.ts';
import { trialStatistics } from '../../core/trial/trial-statistics.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';
import { type StoreOptions, withStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

interface MarginsOptions extends StoreOptions {
  readonly assembly: string;
  readonly presses: string;
  readonly slower: string;
  readonly faster: string;
  readonly runs: string;
  readonly json?: boolean;
}

/**
 * `margins`: states how much slower and faster the second press may be, and keeps it with its time, before the runs
 * are compared; says how likely such a comparison is to succeed where the presses are alike.
 */
export async function margins(options: MarginsOptions): Promise<void> {
  const [first, second, more] = options.presses.split(',').map((part) => part.trim());
  if (!first || !second || more !== undefined) {
    throw new OptionError(
      `--presses: expected two names parted by a comma, came "${options.presses}"`,
      'Write for example --presses North,South',
    );
  }
  const plan = {
    slowerS: parseDuration(options.slower, '--slower'),
    fasterS: parseDuration(options.faster, '--faster'),
    statedAt: new Date().toISOString(),
  };
  if (!(plan.slowerS > 0 && plan.fasterS > 0)) {
    throw new OptionError(
      'margins must be above 0 s',
      'State how much slower and faster the second press may be, for example --slower 3s --faster 5s',
    );
  }
  const runs = parseCount(options.runs, '--runs', { least: 3, most: 100 });
  await withStore(options, (store) => {
    store.saveSetting(marginsKey(options.assembly, first, second), JSON.stringify(plan));
    const sdS = knownSd(store, options.assembly, [first, second]);
    const inSd = sdS === null ? 2 : Math.min(plan.slowerS, plan.fasterS) / sdS;
    const power = equivalencePower(runs, inSd);
    if (options.json)
      return printJson({
        assembly: options.assembly,
        first,
        second,
        ...plan,
        runsEach: runs,
        runToRunSdS: sdS,
        marginInSd: inSd,
        power,
      });
    print(
      [
        MARGIN_TEXT.kept({
          ...plan,
          second: neutralise(second),
          first: neutralise(first),
          assembly: neutralise(options.assembly),
        }),
        sdS === null ? MARGIN_TEXT.noDeviation : MARGIN_TEXT.deviation(sdS),
        powerText(runs, inSd, power),
      ].join('\n'),
    );
  });
}

/** Largest run-to-run deviation of this assembly's trials on either press, s; null where none has two counting runs. */
function knownSd(store: Store, assembly: string, presses: readonly string[]): number | null {
  const sds = store
    .trials()
    .filter((trial) => trial.assemblyName === assembly && presses.includes(trial.pressName))
    .flatMap(({ trialId }) => trialStatistics(store.trialRuns(trialId)).sdSoakS ?? [])
    .filter((sdS) => sdS > 0);
  return sds.length === 0 ? null : Math.max(...sds);
}
