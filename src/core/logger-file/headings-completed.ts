import { headingMeaning, tickUsInHeading } from '../wire/plain/heading-words.ts';
import {
  type TemperatureUnit,
  temperatureUnitInHeading,
  wholeTemperatureUnit,
} from '../wire/plain/temperature-unit.ts';
import type { ColumnProfile } from './column-profile.ts';
import type { LoggerHeadings } from './find-headings.ts';
import { labelsOf } from './unlabelled.ts';

/** Completes the headings from what stands elsewhere: names in the rows, unit columns, a unit in the preamble. */
export function headingsCompleted(
  headings: LoggerHeadings,
  profiles: readonly ColumnProfile[],
  preamble: readonly string[],
): LoggerHeadings {
  const units = headings.units.map((unit, column) => unit ?? unitBeside(profiles[column + 1]));
  const ticksUs = headings.ticksUs.map((tick, column) => tick ?? tickBeside(profiles[column + 1]));
  return withUnitSaid({ ...headings, units, ticksUs }, profiles, preamble);
}

/** Names that stand in the rows themselves, for the last columns (a stamp in front has none). */
export function withLabels(headings: LoggerHeadings, row: string): LoggerHeadings {
  const labels = labelsOf(row);
  const lead = headings.names.length - labels.length;
  if (lead < 0) return headings;
  const names = headings.names.map((name, column) => labels[column - lead] ?? name);
  return {
    ...headings,
    names,
    units: names.map(
      (name, column) => headings.units[column] ?? (name ? (temperatureUnitInHeading(name) ?? null) : null),
    ),
    ticksUs: names.map(
      (name, column) => headings.ticksUs[column] ?? (name ? (tickUsInHeading(name) ?? null) : null),
    ),
  };
}

/** Some loggers give each channel a column of its own for the unit, behind it. */
function unitBeside(next: ColumnProfile | undefined): TemperatureUnit | null {
  if (next?.kind !== 'text') return null;
  const units = new Set(next.texts.map((text) => wholeTemperatureUnit(text)));
  const [unit] = units;
  return units.size === 1 ? (unit ?? null) : null;
}

/** The same for times: `0;ms;21.5;C`. */
function tickBeside(next: ColumnProfile | undefined): number | null {
  if (next?.kind !== 'text') return null;
  const [text, ...more] = new Set(next.texts);
  return text === undefined || more.length > 0 || text.length > 12 ? null : (tickUsInHeading(text) ?? null);
}

/** A unit said once above the table (`Temperature unit: °C`) holds for the columns that name none. */
function withUnitSaid(
  headings: LoggerHeadings,
  profiles: readonly ColumnProfile[],
  preamble: readonly string[],
): LoggerHeadings {
  if (headings.units.some((unit) => unit !== null) || profiles.some((profile) => profile.printedUnit))
    return headings;
  const said = new Set<TemperatureUnit>();
  for (const line of preamble) {
    if (line.length > 500 || !/\bunits?\b|temperatures? (?:are|is|in)\b|\bdegrees\b/i.test(line)) continue;
    const after = /\bunits?\b[^:=,;\t]*[:=,;\t]\s*["']?([^"',;\t]+)/i.exec(line)?.[1];
    const unit = (after ? wholeTemperatureUnit(after) : undefined) ?? temperatureUnitInHeading(line);
    if (unit) said.add(unit);
  }
  const [unit] = said;
  return said.size === 1 && unit
    ? {
        ...headings,
        units: headings.names.map((name) => {
          const meaning = name === null ? 'unknown' : headingMeaning(name);
          return meaning === 'temperature' || meaning === 'unknown' ? unit : null;
        }),
      }
    : headings;
}
