import { parseLength } from '../units/parse-length.ts';
import { UnitError } from '../units/UnitError.ts';
import { WarmUpError } from '../warm-up/WarmUpError.ts';
import type { ProbePlace } from './PlatenSurvey.ts';

/** Places as given; `file` and `channel` say whose. */
export interface GivenPlace extends ProbePlace {
  readonly file: string | null;
  readonly channel: number;
}

const REMEDY =
  'Write a CSV file with the headings channel, x_mm, y_mm (or x_in, y_in; file where there are several), or places such as "30/30mm, 270/30mm"';

/** `30/30mm, 270/30mm`: x/y of the probes in order, mm from the front left corner. The unit may stand once
 * at the end of a place; a decimal comma is none here. */
export function readPlaceList(text: string): readonly ProbePlace[] {
  return text
    .split(/[,;]/u)
    .filter((part) => part.trim() !== '')
    .map((part) => {
      const [x, y, more] = part.split('/').map((side) => side.trim());
      if (x === undefined || y === undefined || more !== undefined) throw wrong(`a place x/y`, part);
      const unit = /[a-z"″]+$/iu.exec(y)?.[0] ?? '';
      return {
        xMm: length(/[a-z"″]$/iu.test(x) ? x : `${x}${unit}`, part),
        yMm: length(y, part),
      };
    });
}

/** Places from a CSV text: a heading row, then one row a probe. Comma, semicolon or tab; the unit stands in the heading. */
export function readPlaceTable(text: string): readonly GivenPlace[] {
  const lines = text
    .replace(/^\uFEFF/u, '')
    .split(/\r\n|\n|\r/u)
    .filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const separator = [';', '\t', ','].find((one) => lines[0]?.includes(one)) ?? ',';
  const cells = (line: string) => line.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/u, '$1'));
  const headings = cells(lines[0] ?? '').map((heading) => heading.toLowerCase());
  const channel = headings.findIndex((heading) => heading === 'channel' || heading === 'probe');
  const x = headings.findIndex((heading) => /^x[ _]?\(?(mm|cm|in)\)?$/u.test(heading));
  const y = headings.findIndex((heading) => /^y[ _]?\(?(mm|cm|in)\)?$/u.test(heading));
  const file = headings.indexOf('file');
  if (channel < 0 || x < 0 || y < 0) {
    throw wrong('the headings channel, x_mm and y_mm', (lines[0] ?? 'an empty file').slice(0, 80));
  }
  const unitOf = (index: number) => /(mm|cm|in)\)?$/u.exec(headings[index]!)![1]!;
  return lines.slice(1).map((line) => {
    const row = cells(line);
    const number = Number(row[channel]);
    if (!Number.isInteger(number) || number < 1) throw wrong('a channel counted from 1', line.slice(0, 80));
    const at = (index: number) => length(`${row[index] ?? ''} ${unitOf(index)}`, line.slice(0, 80));
    return {
      file: file < 0 || row[file] === '' ? null : (row[file] ?? null),
      channel: number,
      xMm: at(x),
      yMm: at(y),
    };
  });
}

function length(text: string, whole: string): number {
  try {
    return parseLength(text, '--positions');
  } catch (error) {
    if (error instanceof UnitError) throw wrong('lengths with a unit', whole.trim());
    throw error;
  }
}

function wrong(expected: string, came: string): WarmUpError {
  return new WarmUpError('positions-unreadable', `--positions: expected ${expected}, came "${came}"`, REMEDY);
}
