import type { PlainLayout } from './PlainLayout.ts';
import { shownName } from './shown-name.ts';
import { UNIT_WORDS } from './temperature-unit.ts';

const SEPARATED = {
  tab: 'separated by tabs',
  semicolon: 'separated by semicolons',
  bar: 'separated by bars',
  comma: 'separated by commas',
  space: 'separated by spaces',
  single: '',
  json: 'of a JSON line',
} as const;
const FROM = { line: 'from the line', heading: 'from the heading', option: 'as stated by you' } as const;
const TICK: Readonly<Record<number, string>> = { 1: 'microseconds', 1e3: 'milliseconds', 1e6: 'seconds' };

/** What was recognised of a plain reader, for people: "2 columns separated by commas, degrees Celsius from the line". */
export function plainLayoutInWords(layout: PlainLayout): string {
  const count = layout.columns.length;
  const parts = [count === 1 ? 'one value a line' : `${count} columns ${SEPARATED[layout.separator]}`];
  if (layout.decimal === ',') parts.push('decimal comma');
  layout.columns.forEach((column, at) => {
    if (column.kind === 'clock')
      parts.push(`column ${at + 1} is the reader's clock in ${TICK[column.tickUs] ?? 'its own unit'}`);
    if (column.kind === 'sequence') parts.push(`column ${at + 1} counts the samples`);
    if (column.kind === 'other') parts.push(`column ${at + 1} is not used`);
  });
  const temperatures = layout.columns.filter((column) => column.kind === 'temperature');
  const names = temperatures.flatMap((column) => (column.name ? [shownName(column.name)] : []));
  if (count > 1)
    parts.push(temperatures.length === 1 ? 'one temperature' : `${temperatures.length} temperatures`);
  if (names.length > 0 && names.length === temperatures.length)
    parts[parts.length - 1] += ` (${names.join(', ')})`;
  const units = new Set(
    temperatures.map((column) =>
      column.unit && column.unitFrom
        ? `${UNIT_WORDS[column.unit]} ${FROM[column.unitFrom]}`
        : 'unit not known',
    ),
  );
  parts.push(...units);
  return parts.join(', ');
}
