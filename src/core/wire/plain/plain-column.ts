import { headingMeaning, tickUsInHeading } from './heading-words.ts';
import type { LearntLine, PlainColumn } from './PlainLayout.ts';
import { type TemperatureUnit, temperatureUnitInHeading } from './temperature-unit.ts';

/** Arrival must span this long before a reader's clock can be told from the host's, µs. */
export const LEAST_ARRIVAL_SPAN_US = 200_000;
const TICKS_US = [1, 1e3, 1e6];

function numbers(lines: readonly LearntLine[], at: number): readonly number[] {
  return lines.flatMap((line) => {
    const content = line.values.fields[at]?.content;
    return content?.kind === 'number' ? [content.value] : [];
  });
}

function steps(values: readonly number[]): readonly number[] {
  return values.slice(1).map((value, at) => value - (values[at] ?? Number.NaN));
}

/** Rises at every line, by nearly the same step: a clock or a counter, not a temperature. */
export function risesEvenly(lines: readonly LearntLine[], at: number): boolean {
  const values = numbers(lines, at);
  if (values.length < lines.length || values.length < 3) return false;
  const rises = steps(values).toSorted((a, b) => a - b);
  const middle = rises[rises.length >> 1] ?? 0;
  return (rises[0] ?? 0) > 0 && (rises.at(-1) ?? 0) <= 1.5 * middle && (rises[0] ?? 0) >= 0.5 * middle;
}

/** Rises by exactly one at every line. */
export function countsUp(lines: readonly LearntLine[], at: number): boolean {
  const values = numbers(lines, at);
  return values.length === lines.length && values.length >= 3 && steps(values).every((step) => step === 1);
}

/** The tick, of 1 µs, 1 ms and 1 s, with which a column keeps pace with the arrivals (within a factor of 1.5). */
function tickFromArrivals(lines: readonly LearntLine[], at: number): number | undefined {
  const values = numbers(lines, at);
  const span = (lines.at(-1)?.arrivedUs ?? 0) - (lines[0]?.arrivedUs ?? 0);
  const rise = (values.at(-1) ?? 0) - (values[0] ?? 0);
  if (values.length < lines.length || span < LEAST_ARRIVAL_SPAN_US || rise <= 0) return undefined;
  return TICKS_US.find((tick) => Math.abs(Math.log((rise * tick) / span)) < Math.log(1.5));
}

/**
 * What one column of a plain reader holds: by its label or heading, its printed unit, and how its
 * values run over the lines seen. A unit comes from the line, the heading, or the user's word, in this
 * order, and is null where none of them says it.
 */
export function plainColumn(
  lines: readonly LearntLine[],
  at: number,
  heading: string | null,
  statedUnit: TemperatureUnit | null,
  remarkUnit: TemperatureUnit | null,
): PlainColumn {
  const fields = lines.flatMap((line) => line.values.fields[at] ?? []);
  const first = fields[0];
  const name = first?.label ?? heading;
  const other = fields.find((field) => field.otherUnit)?.otherUnit ?? null;
  const printed = fields.find((field) => field.unit)?.unit ?? null;
  const meaning = printed ? 'temperature' : name ? headingMeaning(name) : 'unknown';
  if (fields.some((field) => field.content.kind === 'stamp')) return { kind: 'other' };
  if (meaning === 'time') {
    const tickUs = (other ? tickUsInHeading(other) : undefined) ?? tickUsInHeading(name ?? '');
    const found = tickUs ?? tickFromArrivals(lines, at);
    return found && numbers(lines, at).length > 0 ? { kind: 'clock', tickUs: found } : { kind: 'other' };
  }
  if (meaning === 'sequence') return countsUp(lines, at) ? { kind: 'sequence' } : { kind: 'other' };
  if (other || meaning === 'other' || meaning === 'date') return { kind: 'other' };
  if (meaning === 'unknown' && !name && at === 0 && (lines[0]?.values.fields.length ?? 0) > 1) {
    if (countsUp(lines, at)) return { kind: 'sequence' };
    if (risesEvenly(lines, at)) {
      const tickUs = tickFromArrivals(lines, at);
      return tickUs ? { kind: 'clock', tickUs } : { kind: 'other' };
    }
  }
  const headed =
    (name ? temperatureUnitInHeading(name) : undefined) ??
    (heading ? temperatureUnitInHeading(heading) : undefined) ??
    remarkUnit;
  const unit = printed ?? headed ?? statedUnit;
  const unitFrom = printed ? 'line' : headed ? 'heading' : statedUnit ? 'option' : null;
  const values = fields.filter((field) => field.content.kind === 'number');
  const printsUnit = printed !== null && values.filter((field) => field.unit).length * 2 > values.length;
  return { kind: 'temperature', name, unit, unitFrom, printsUnit };
}
