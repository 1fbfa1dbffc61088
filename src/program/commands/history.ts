import type { Store } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { trialHistoryLines } from '../../core/text/trial-history-text.ts';
import { trialStatistics } from '../../core/trial/trial-statistics.ts';
import type { TrialPoint } from '../../core/trial-history/IndividualsChart.ts';
import { individualsChart } from '../../core/trial-history/individuals-chart.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

interface HistoryOptions extends StoreOptions {
  readonly assembly: string;
  readonly press: string;
  readonly base?: string;
  readonly json?: boolean;
}

/**
 * `history`: soak time of one assembly on one press over months, one point a trial (the mean of its counting runs),
 * with moving range, limits and signals. Exit code 1 under two trials, or when the latest trial gives a signal.
 */
export async function history(options: HistoryOptions): Promise<void> {
  await readFromStore(options, (store) => {
    const points = pointsOf(store, options);
    if (points.length < 2) {
      throw new OptionError(
        `history: ${points.length} ${points.length === 1 ? 'trial' : 'trials'} of ${neutralise(options.assembly)} on ${neutralise(options.press)} with a soak time; two are needed`,
        'Run more trials, or check the names: dwellwright trials',
        'too-few-trials',
      );
    }
    const basePoints =
      options.base === undefined
        ? points.length
        : parseCount(options.base, '--base', { least: 2, most: points.length });
    const chart = individualsChart(points, { basePoints });
    if (options.json) printJson({ assembly: options.assembly, press: options.press, ...chart });
    else
      print(
        [
          COMMAND_TEXT.history(neutralise(options.assembly), neutralise(options.press)),
          ...trialHistoryLines(chart),
        ].join('\n'),
      );
    if ((chart.points.at(-1)?.signals.length ?? 0) > 0) process.exitCode = 1;
  });
}

/** Trials from the onset alone are short and stay out; so do trials without a counting run. */
function pointsOf(store: Store, { assembly, press }: HistoryOptions): readonly TrialPoint[] {
  return store
    .trials()
    .filter((trial) => trial.assemblyName === assembly && trial.pressName === press)
    .sort((a, b) => Date.parse(a.startedAt) - Date.parse(b.startedAt))
    .flatMap(({ trialId, startedAt }) => {
      const { meanSoakS, runs, fromOnset } = trialStatistics(store.trialRuns(trialId));
      return meanSoakS === null || fromOnset ? [] : [{ trialId, madeAt: startedAt, meanSoakS, runs }];
    });
}
