import { parse } from 'csv-parse/sync';
import type { Delimiter } from './LoggerLayout.ts';

const SINGLE_QUOTED = /^'(.*)'$/;

/**
 * The cells of one line, trimmed. Lines with quotes are read by csv-parse after RFC 4180 (forgiving
 * stray quotes); without any quote the same rules come down to splitting at the delimiter.
 */
export function loggerCells(line: string, delimiter: Delimiter): readonly string[] {
  if (line.includes('"')) {
    const quoted = quotedCells(delimiter === 'space' ? line.trim() : line, delimiter);
    if (quoted) return quoted.map((cell) => cell.trim());
  }
  if (delimiter === 'space') {
    const text = line.trim();
    return text === '' ? [] : text.split(/\s+/);
  }
  const cells = line.split(delimiter).map((cell) => cell.trim());
  return line.includes("'") ? cells.map((cell) => SINGLE_QUOTED.exec(cell)?.[1]?.trim() ?? cell) : cells;
}

function quotedCells(line: string, delimiter: Delimiter): readonly string[] | undefined {
  try {
    const records = parse(line, {
      delimiter: delimiter === 'space' ? [' ', '\t'] : delimiter,
      relax_quotes: true,
      relax_column_count: true,
      ltrim: delimiter !== '\t',
      rtrim: delimiter !== '\t',
      record_delimiter: '\n',
    });
    const cells = records[0] as readonly string[] | undefined;
    return delimiter === 'space' ? cells?.filter((cell) => cell !== '') : cells;
  } catch {
    // A quote that csv-parse cannot place: the line is split as if it had none.
    return undefined;
  }
}
