import { shownName } from '../wire/plain/shown-name.ts';

/** A column as people find it: `column 2 "Time"`. */
export function columnInWords(names: readonly (string | null)[], column: number): string {
  const name = names[column];
  return name ? `column ${column + 1} "${shownName(name)}"` : `column ${column + 1}`;
}

/** The columns of a file, for a message: `1 (no heading), 2 "Time", 3 "T1"`. */
export function columnsInWords(names: readonly (string | null)[]): string {
  const shown = names
    .slice(0, 30)
    .map((name, at) => (name ? `${at + 1} "${shownName(name)}"` : `${at + 1} (no heading)`));
  return names.length > 30 ? `${shown.join(', ')} and ${names.length - 30} more` : shown.join(', ');
}

/** What to type for a column: its heading if that is plain and stands once, else its number. */
export function columnOption(names: readonly (string | null)[], column: number): string {
  const name = names[column];
  const plain =
    name &&
    shownName(name) === name &&
    !/["'`$\\]/.test(name) &&
    names.filter((one) => one === name).length === 1;
  if (!plain) return String(column + 1);
  return /^[\w.-]+$/.test(name) ? name : `"${name}"`;
}
