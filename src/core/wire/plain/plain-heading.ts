import type { PlainSeparator } from './PlainField.ts';
import { type TemperatureUnit, temperatureUnitInHeading, wholeTemperatureUnit } from './temperature-unit.ts';

const SIGNS: Readonly<Record<PlainSeparator, RegExp>> = {
  tab: /\t/,
  semicolon: /;/,
  bar: /\|/,
  comma: /,/,
  space: /\s+/,
  single: /$^/,
  json: /$^/,
};
const UNIT_CELL = /^[[({<]?\s*(?:[°º]?[CFKcfk]|deg ?[CFK]|m?s|[uµ]s|sec|min|h|%|-|V|mV|W)?\s*[\])}>]?$/;

/** Headings of a plain reader's columns, one per column; null where none was printed. */
export interface PlainHeading {
  readonly names: readonly (string | null)[];
  /** Unit said once for all, in a line such as `Units: C`. */
  readonly unit: TemperatureUnit | null;
}

function cells(line: string, separator: PlainSeparator, columns: number): readonly string[] | undefined {
  const text = line.replace(/^\s*(?:#|\/\/)\s*/, '').trim();
  const parts = separator === 'single' ? [text] : text.split(SIGNS[separator]).map((part) => part.trim());
  if (parts.length === columns + 1 && parts.at(-1) === '') parts.pop();
  return parts.length === columns && parts.some((part) => /\p{L}/u.test(part)) ? parts : undefined;
}

/**
 * Finds the heading among the text lines that came before the first values, latest last: a line with as
 * many words as the values have columns, a line of units under it joined to it, and a unit said once.
 */
export function plainHeading(
  remarks: readonly string[],
  separator: PlainSeparator,
  columns: number,
): PlainHeading {
  const said = remarks.findLast((line) => /\bunits?\b|degrees|temperatures? (?:are|is|in)\b/i.test(line));
  const unit = said ? (unitSaid(said) ?? null) : null;
  const near = remarks.slice(-3).toReversed();
  const rows = near.flatMap((line) => cells(line, separator, columns) ?? []);
  const [first, second] = near
    .map((line) => cells(line, separator, columns))
    .filter((row) => row !== undefined);
  if (rows.length === 0 || !first) return { names: Array.from({ length: columns }, () => null), unit };
  const names =
    second && first.every((cell) => UNIT_CELL.test(cell))
      ? first.map((cell, at) =>
          `${second[at] ?? ''} ${/^[[({]/.test(cell) || cell === '' ? cell : `[${cell}]`}`.trim(),
        )
      : first;
  return { names: names.map((name) => (name === '' ? null : name)), unit };
}

function unitSaid(line: string): TemperatureUnit | undefined {
  const after = /\bunits?\b[^:=]*[:=]\s*(.+)$/i.exec(line)?.[1];
  return (after ? wholeTemperatureUnit(after) : undefined) ?? temperatureUnitInHeading(line);
}
