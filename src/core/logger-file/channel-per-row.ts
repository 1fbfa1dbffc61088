import type { ColumnProfile } from './column-profile.ts';
import { columnInWords, columnOption } from './columns-in-words.ts';
import type { LoggerTable } from './find-table.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';
import { shown } from './only-rows.ts';

const MOST_CHANNELS = 64;
const CHANNEL =
  /^(?:ch(?:an(?:nel)?)?|sensor|probe|tag|name|point|input|parameter|series|source|device|location|variable|id)\b/i;

/**
 * A file with a row for each channel, told by a column that runs through the same few names over and over: read as it stands,
 * the temperatures of all channels would make one trace. Null where there is nothing to refuse.
 */
export function channelPerRow(
  table: LoggerTable,
  names: readonly (string | null)[],
  profiles: readonly ColumnProfile[],
  used: readonly number[],
): LoggerFileProblem | null {
  for (const [column, profile] of profiles.entries()) {
    if (used.includes(column)) continue;
    const named = CHANNEL.test(names[column] ?? '');
    if (profile.kind !== 'text' && !(named && profile.kind === 'number')) continue;
    const held = table.rows.map((at) => table.lines[at]?.[column] ?? '');
    if (!runsThrough(held)) continue;
    const first = shown(held.slice(0, 1));
    return new LoggerFileProblem(
      'logger-file-channel-per-row',
      `${columnInWords(names, column)} names a channel in each row (${shown(held)}), so rows of several channels follow each other`,
      `add --rows "${columnOption(names, column).replaceAll('"', '')}=${first}" (or another) to read the rows of one channel, or export the log with a column for each channel`,
    );
  }
  return null;
}

/** Few different texts, one after the other in the same order, or each as one block. */
function runsThrough(held: readonly string[]): boolean {
  const different = new Set(held).size;
  if (different < 2 || different > MOST_CHANNELS || held.length < 2 * different) return false;
  const again = held.filter((text, at) => at >= different && text === held[at - different]).length;
  const changes = held.filter((text, at) => at > 0 && text !== held[at - 1]).length;
  return again >= 0.8 * (held.length - different) && changes >= 0.8 * (held.length - 1);
}
