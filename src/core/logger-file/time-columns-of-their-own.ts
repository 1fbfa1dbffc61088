import { headingMeaning } from '../wire/plain/heading-words.ts';
import type { ColumnProfile } from './column-profile.ts';
import { columnOption, columnsInWords } from './columns-in-words.ts';
import { findColumn } from './find-column.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';

const NUMBER_BEHIND = /[\s_#]*\d{1,2}(?=\s*(?:[[({]|$))/;

/** `Time`, and `Time1 (s)` as well. */
function namesTime(name: string | null): boolean {
  if (name === null) return false;
  const meaning = headingMeaning(name);
  return meaning === 'unknown'
    ? headingMeaning(name.replace(NUMBER_BEHIND, '')) === 'time'
    : meaning === 'time';
}

/**
 * Where each channel has times of its own (`Time1,T1,Time2,T2`), the column left of the one channel that is picked: channels at
 * two rates are not rows of one table. Null where the file is not so.
 */
export function timeColumnOfItsOwn(
  names: readonly (string | null)[],
  profiles: readonly ColumnProfile[],
  picked: readonly string[],
): number | LoggerFileProblem | null {
  const times = names.flatMap((name, at) =>
    namesTime(name) && profiles[at]?.kind === 'number' && profiles[at].rises ? [at] : [],
  );
  const bounds = [...times, names.length];
  const channels = times.map((time, at) =>
    names.flatMap((_, column) =>
      column > time && column < (bounds[at + 1] ?? 0) && profiles[column]?.kind === 'number' ? [column] : [],
    ),
  );
  if (times.length < 2 || channels.some((columns) => columns.length === 0)) return null;
  const wanted = picked.map((one) => findColumn(names, one));
  const found = new Set(wanted.map((column) => times.findLast((time) => time < (column ?? 0))));
  const [only] = found;
  if (found.size === 1 && only !== undefined) return only;
  return new LoggerFileProblem(
    'logger-file-temperature-unknown',
    `the channels have times of their own, so only one can be read at a time; columns: ${columnsInWords(names)}`,
    `add ${channels
      .slice(0, 12)
      .map(([column = 0]) => `--temperature-column ${columnOption(names, column)}`)
      .join(' or ')}`,
  );
}
