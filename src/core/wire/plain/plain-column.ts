import { headingMeaning, tickUsInHeading } from './heading-words.ts';
import type { LearntLine, PlainColumn } from './PlainLayout.ts';
import { type TemperatureUnit, temperatureUnitInHeading, wholeTemperatureUnit } from './temperature-unit.ts';

/** Arrival must span this long before a reader's clock can be told from the host's, µs. */
export const LEAST_ARRIVAL_SPAN_US = 200_000;

function numbers(lines: readonly LearntLine[], at: number): readonly number[] {
  return lines.flatMap((line) => {
    const content = line.values.fields[at]?.content;
    return content?.kind === 'number' ? [content.value] : [];
  });
}

function steps(values: readonly number[]): readonly number[] {
  return values.slice(1).map((value, at) => value - (values[at] ?? Number.NaN));
}

/** Rises at every line: a clock, a counter, or a bond line being heated. */
export function risesThroughout(lines: readonly LearntLine[], at: number): boolean {
  const values = numbers(lines, at);
  return values.length === lines.length && values.length >= 3 && steps(values).every((step) => step > 0);
}

/** Rises by exactly one at every line. */
export function countsUp(lines: readonly LearntLine[], at: number): boolean {
  const values = numbers(lines, at);
  return values.length === lines.length && values.length >= 3 && steps(values).every((step) => step === 1);
}

/**
 * The tick with which a column keeps pace with the arrivals: 1 µs or 1 ms within a factor of 1.5 (no
 * temperature rises by hundreds a second), 1 s within 10 % and by even steps, since a bond line may rise by 1 °C/s.
 */
export function tickFromArrivals(lines: readonly LearntLine[], at: number): number | undefined {
  const values = numbers(lines, at);
  const span = (lines.at(-1)?.arrivedUs ?? 0) - (lines[0]?.arrivedUs ?? 0);
  const rise = (values.at(-1) ?? 0) - (values[0] ?? 0);
  if (values.length < lines.length || span < LEAST_ARRIVAL_SPAN_US || rise <= 0) return undefined;
  const near = (tick: number, factor: number) => Math.abs(Math.log((rise * tick) / span)) < Math.log(factor);
  const fine = [1, 1e3].find((tick) => near(tick, 1.5));
  if (fine) return fine;
  const mean = rise / (values.length - 1);
  const even = steps(values).every((step) => Math.abs(step - mean) < 0.1 * mean);
  return near(1e6, 1.1) && even ? 1e6 : undefined;
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
    if (risesThroughout(lines, at)) {
      const tickUs = tickFromArrivals(lines, at);
      return tickUs ? { kind: 'clock', tickUs } : { kind: 'other' };
    }
  }
  const headed =
    (name ? (wholeTemperatureUnit(name) ?? temperatureUnitInHeading(name)) : undefined) ??
    (heading ? temperatureUnitInHeading(heading) : undefined) ??
    remarkUnit;
  const unit = printed ?? headed ?? statedUnit;
  const unitFrom = printed ? 'line' : headed ? 'heading' : statedUnit ? 'option' : null;
  const values = fields.filter((field) => field.content.kind === 'number');
  const printsUnit = printed !== null && values.filter((field) => field.unit).length * 2 > values.length;
  return { kind: 'temperature', name, unit, unitFrom, printsUnit };
}
