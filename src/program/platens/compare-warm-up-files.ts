import { alignedSeries } from '../../core/press-comparison/aligned-series.ts';
import { compareWarmUps } from '../../core/press-comparison/compare-warm-ups.ts';
import { warmUpComparisonJson } from '../../core/press-comparison/comparison-json.ts';
import { warmUpComparisonLines } from '../../core/text/comparison-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import type { ChannelRecord } from '../../core/warm-up/gather-platens.ts';
import { type CompareOptions, sideNames } from '../commands/compare.ts';
import { analyseFile } from '../commands/warm-up.ts';
import { OptionError } from '../options/OptionError.ts';
import { print, printJson } from '../output/print.ts';
import { openPlatens } from './open-platens.ts';

/** Two sets of recorded warm-ups, side by side. */
export async function compareWarmUpFiles(
  firstFiles: readonly string[],
  secondFiles: readonly string[],
  options: CompareOptions,
): Promise<void> {
  const first = await analyseAll(firstFiles, options);
  const second = await analyseAll(secondFiles, options);
  if (options.names === undefined) for (const side of [first, second]) requireOnePress(side);
  const names = sideNames(options, first[0]?.platens.head?.pressName, second[0]?.platens.head?.pressName);
  const comparison = compareWarmUps(
    { name: neutralise(names.first), warmUps: first.map((one) => one.result) },
    { name: neutralise(names.second), warmUps: second.map((one) => one.result) },
  );
  const simulated = [...first, ...second].some(({ platens }) => platens.head?.simulated === true);
  if (!options.json) {
    return print(
      [...(simulated ? ['SIMULATED.'] : []), ...warmUpComparisonLines(comparison, options.show)].join('\n'),
    );
  }
  const series = ([side, files]: readonly ['first' | 'second', typeof first]) =>
    files.flatMap(({ platens, result }) => alignedSeries(platens.name, side, platens.record, result.powerOn));
  printJson({
    simulated,
    ...warmUpComparisonJson(comparison),
    ...(options.series
      ? {
          series: (
            [
              ['first', first],
              ['second', second],
            ] as const
          ).flatMap(series),
        }
      : {}),
  });
}

function requireOnePress(side: Awaited<ReturnType<typeof analyseAll>>): void {
  const presses = [...new Set(side.flatMap(({ platens }) => platens.head?.pressName ?? []))];
  if (presses.length <= 1) return;
  throw new OptionError(
    `compare: one side holds recordings of different presses, ${presses.map((name) => neutralise(name)).join(' and ')}`,
    'Keep each side to one press, or name the two sides with --names',
  );
}

async function analyseAll(files: readonly string[], options: CompareOptions) {
  const all = [];
  for (const file of files) all.push(await analyseFile(file, options));
  return all;
}

/** A platen that comes up by less than this was hot at the start: the recording is of a trial, °C. */
const COLD_START_C = 50;

/** True when a recording holds closings and its platens are hot from the start, or it has no platen channel. */
export async function looksLikeTrial(file: string, options: CompareOptions): Promise<boolean> {
  // Another logger's file without --roles names no platen; whether it can be read at all the trial's own path says.
  const { record } = await openPlatens(file, options).catch((error: unknown) => {
    if (error instanceof OptionError && options.roles === undefined) return { record: { channels: [] } };
    throw error;
  });
  return record.channels.every(({ valuesC }: Pick<ChannelRecord, 'valuesC'>) => {
    const first = valuesC[0];
    return first === undefined || valuesC.every((value) => value - first < COLD_START_C);
  });
}
