import type { ProbeCorrection } from '../probe/probe-correction.ts';
import type { ReadingColumns } from '../reading/ReadingColumns.ts';

/** Readings in columns with each probe's calibration applied, as `correctedReading` does one by one. */
export function correctedColumns<Columns extends ReadingColumns>(
  columns: Columns,
  corrections: readonly (ProbeCorrection | null)[],
): Columns {
  const { channels, kinds } = columns;
  const temperaturesC = columns.temperaturesC.slice();
  for (let channel = 0; channel < channels; channel += 1) {
    const correct = corrections[channel] ?? null;
    if (correct === null) continue;
    for (let at = channel; at < temperaturesC.length; at += channels)
      if (kinds[at] === 0) temperaturesC[at] = correct(temperaturesC[at] as number);
  }
  return { ...columns, temperaturesC };
}
