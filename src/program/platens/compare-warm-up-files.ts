import { alignedSeries } from '../../core/press-comparison/aligned-series.ts';
import { compareWarmUps } from '../../core/press-comparison/compare-warm-ups.ts';
import { warmUpComparisonJson } from '../../core/press-comparison/comparison-json.ts';
import { warmUpComparisonLines } from '../../core/text/comparison-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import type { ChannelRecord } from '../../core/warm-up/gather-platens.ts';
import type { CompareOptions } from '../commands/compare.ts';
import { OptionError } from '../options/OptionError.ts';
import { print, printJson } from '../output/print.ts';
import { gatherSides, type WarmUpSide } from './gather-sides.ts';
import { openPlatens } from './open-platens.ts';

/** Two sets of recorded warm-ups, side by side. */
export async function compareWarmUpFiles(options: CompareOptions): Promise<void> {
  const { first, second } = await gatherSides(options);
  const comparison = compareWarmUps(
    { name: neutralise(first.name), warmUps: first.heatings.map((one) => one.result) },
    { name: neutralise(second.name), warmUps: second.heatings.map((one) => one.result) },
  );
  const simulated = [...first.heatings, ...second.heatings].some(
    ({ platens }) => platens.head?.simulated === true,
  );
  const remarks = [...first.remarks, ...second.remarks];
  if (!options.json) {
    return print(
      [
        ...(simulated ? ['SIMULATED.'] : []),
        ...warmUpComparisonLines(comparison, options.show),
        ...remarks.map((remark) => `Note: ${remark}`),
      ].join('\n'),
    );
  }
  const series = (side: 'first' | 'second', { heatings }: WarmUpSide) =>
    heatings.flatMap(({ label, platens, result }) =>
      alignedSeries(label, side, platens.record, result.powerOn),
    );
  printJson({
    simulated,
    ...warmUpComparisonJson(comparison),
    sources: { first: sourcesOf(first), second: sourcesOf(second) },
    leftOut: remarks,
    ...(options.series ? { series: [...series('first', first), ...series('second', second)] } : {}),
  });
}

function sourcesOf({ heatings }: WarmUpSide) {
  return heatings.map(({ platens, heating }) => ({
    source: platens.name,
    madeAt: platens.head?.madeAt ?? null,
    heating: heating.number,
    heatings: heating.of,
  }));
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
