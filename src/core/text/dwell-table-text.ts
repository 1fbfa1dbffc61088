import type { DwellAtTarget } from '../recheck/dwell-at-target.ts';
import { numberText, type TemperatureUnit, temperatureText } from './units-text.ts';

/** Dwell against target: a table and a picture in one, own scale for all rows. */
export function dwellTableLines(
  rows: readonly DwellAtTarget[],
  unit: TemperatureUnit,
  width = 34,
): readonly string[] {
  const known = rows.flatMap((row) =>
    [row.meanDwellS, row.toleranceDwellS, row.nextRunDwellS].filter((value) => value !== null),
  );
  if (known.length === 0) return ['No target gives a dwell.'];
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const column = (valueS: number): number =>
    high === low ? 0 : Math.round(((valueS - low) / (high - low)) * (width - 1));
  const picture = (row: DwellAtTarget): string => {
    const cells: string[] = new Array(width).fill(' ');
    const ends = [row.meanDwellS, row.toleranceDwellS ?? row.nextRunDwellS]
      .filter((value) => value !== null)
      .map(column);
    for (let at = ends[0] ?? 0; ends.length === 2 && at <= (ends[1] as number); at += 1) cells[at] = '-';
    if (row.toleranceDwellS !== null) cells[column(row.toleranceDwellS)] = 'T';
    if (row.nextRunDwellS !== null) cells[column(row.nextRunDwellS)] = 'N';
    if (row.meanDwellS !== null) cells[column(row.meanDwellS)] = 'M';
    return cells.join('');
  };
  const seconds = (value: number | null): string => (value === null ? '—' : numberText(value, 0)).padStart(6);
  return [
    `Dwell against target, ${numberText(low, 0)} to ${numberText(high, 0)} s: M mean rule, N next run, T most cycles`,
    ...rows.map(
      (row) =>
        `  ${temperatureText(row.targetC, unit).padEnd(19)}|${picture(row)}|${seconds(row.meanDwellS)}${seconds(row.nextRunDwellS)}${seconds(row.toleranceDwellS)} s, ${row.runs} runs`,
    ),
  ];
}
