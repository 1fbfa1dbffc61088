import { headingMeaning } from '../wire/plain/heading-words.ts';
import type { DecimalSign } from '../wire/plain/read-number.ts';
import { temperatureUnitInHeading } from '../wire/plain/temperature-unit.ts';
import { fixedWidthCells, fixedWidthCuts } from './fixed-width.ts';
import type { Delimiter } from './LoggerLayout.ts';
import { loggerCellKind } from './logger-cell.ts';
import { loggerCells } from './logger-cells.ts';

const DELIMITERS: readonly Delimiter[] = ['\t', ';', ',', '|', 'space'];
const SAMPLED_LINES = 300;
/** A unit in a column of its own. */
const UNIT = /^(?:[°º]?[CFK]|m?s|sec|min|h|m?V|%)$/i;
const COMMENT = /^\s*(?:#|\/\/|%)/;
/** A line ruled across, below a heading. */
const RULE = /^(?=.*[-=_]{3})[\s|+:=_-]*$/;

/** The table found in a file's head. */
export interface LoggerTable {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalSign;
  /** Every line of the head as cells; comments and blank lines have none. */
  readonly lines: readonly (readonly string[])[];
  /** Index of the first row of values among `lines`. */
  readonly firstRow: number;
  /** Indices of the rows of values in the head. */
  readonly rows: readonly number[];
  readonly columnCount: number;
  readonly leastColumns: number;
  /** See `LoggerLayout.cuts`. */
  readonly cuts?: readonly number[];
}

export function isComment(line: string): boolean {
  return COMMENT.test(line);
}

/** Cells without the empty ones that trailing separators leave. */
function trimmed(cells: readonly string[]): number {
  let count = cells.length;
  while (count > 0 && cells[count - 1] === '') count -= 1;
  return count;
}

function mostFrequent(counts: readonly number[]): number {
  const tally = new Map<number, number>();
  for (const count of counts) tally.set(count, (tally.get(count) ?? 0) + 1);
  return [...tally].toSorted((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 0;
}

function isValueRow(cells: readonly string[], decimal: DecimalSign | 'either'): boolean {
  const kinds = cells.map((cell) => loggerCellKind(cell, decimal));
  const values = kinds.filter((kind) => kind === 'number' || kind === 'stamp').length;
  const texts = kinds.filter((kind) => kind === 'text').length;
  return values > 0 && values >= texts;
}

function score(lines: readonly string[], delimiter: Delimiter): number {
  const rows = lines
    .map((line) => loggerCells(line, delimiter))
    .filter((cells) => isValueRow(cells, 'either'));
  const usual = mostFrequent(rows.map((cells) => cells.length));
  let points = 0;
  for (const cells of rows) {
    if (cells.length !== usual) continue;
    const kinds = cells.map((cell) => loggerCellKind(cell, 'either'));
    points += kinds.filter((kind) => kind !== 'text' && kind !== 'empty').length;
    points -= cells.filter((cell, at) => kinds[at] === 'text' && !UNIT.test(cell)).length;
  }
  return points;
}

function findDelimiter(lines: readonly string[]): Delimiter {
  const step = Math.max(1, Math.floor(lines.length / SAMPLED_LINES));
  const some = lines.filter((_, at) => at % step === 0).slice(0, SAMPLED_LINES);
  const holding = (sign: string) => some.filter((line) => line.includes(sign)).length > 0.5 * some.length;
  // A file with tabs or semicolons in most lines is not separated by commas (then decimal) or by spaces (then in stamps).
  if (holding('\t') && score(some, '\t') > 0) return '\t';
  if (holding(';') && score(some, ';') > 0) return ';';
  const scored = DELIMITERS.map((delimiter) => ({ delimiter, points: score(some, delimiter) }));
  const [best] = scored.toSorted((a, b) => b.points - a.points);
  // Spaces also stand inside stamps: a sign that cuts every row into values goes before them.
  const clean =
    best?.delimiter === 'space'
      ? DELIMITERS.find((one) => one !== 'space' && cutsClean(some, one))
      : undefined;
  return clean ?? best?.delimiter ?? ',';
}

/** Whether every row of values comes apart into as many cells, at least two, none of them text. */
function cutsClean(lines: readonly string[], delimiter: Delimiter): boolean {
  const rows = lines.map((line) => loggerCells(line, delimiter));
  const valued = rows.filter((cells) => cells.length > 1 && isValueRow(cells, 'either'));
  const [first] = valued;
  return (
    first !== undefined &&
    valued.length * 2 > rows.length &&
    valued.every(
      (cells) =>
        cells.length === first.length && cells.every((cell) => loggerCellKind(cell, 'either') !== 'text'),
    )
  );
}

/** A quoted `1,000` between commas is a thousand; `0,250` between semicolons is a quarter. */
function findDecimal(rows: readonly (readonly string[])[], delimiter: Delimiter): DecimalSign {
  let commas = 0;
  let points = 0;
  for (const cells of rows) {
    for (const cell of cells) {
      if (delimiter === ',' && /^[+-]?\d{1,3}(?:,\d{3})+$/.test(cell)) continue;
      if (/^[+-]?[\d.]*\d,\d+(?:\s*[°a-z]+)?$/i.test(cell)) commas += 1;
      else if (/^[+-]?[\d,]*\d\.\d+(?:\s*[°a-z]+)?$/i.test(cell)) points += 1;
    }
  }
  return commas > points ? ',' : '.';
}

/**
 * Finds the table in the head of a logger's file: delimiter, decimal sign, the first row of values, and
 * how many columns rows have. Undefined where no line holds values.
 */
export function findTable(texts: readonly string[]): LoggerTable | undefined {
  const useful = texts.filter((text) => text.trim() !== '' && !isComment(text));
  const delimiter = findDelimiter(useful);
  const lines = texts.map((text) =>
    text.trim() === '' || isComment(text) || RULE.test(text) ? [] : loggerCells(text, delimiter),
  );
  const decimal = findDecimal(
    lines.filter((cells) => isValueRow(cells, 'either')),
    delimiter,
  );
  const candidates = lines.flatMap((cells, at) => (isValueRow(cells, decimal) ? [at] : []));
  // The latter half decides: metadata with numbers stands at the top.
  const late = candidates.slice(candidates.length >> 1);
  const usual = mostFrequent(late.map((at) => (lines[at] ?? []).length));
  const counts = candidates.map((at) => (lines[at] ?? []).length);
  const frequent = [...new Set(counts)].filter(
    (count) => counts.filter((one) => one === count).length >= 0.1 * counts.length,
  );
  const leastColumns = Math.min(usual, ...frequent.filter((count) => count <= usual && count > 1));
  const widest = Math.max(usual, ...frequent);
  const rows = candidates.filter((at) => {
    const count = (lines[at] ?? []).length;
    return count >= leastColumns && (count <= widest || trimmed(lines[at] ?? []) <= widest);
  });
  const firstRow = firstOfBlock(rows, lines, decimal);
  if (firstRow === undefined) return undefined;
  const headingAt = commentedHeading(texts, firstRow);
  // Between spaces an empty field leaves nothing behind: a short row is only read where the places of its words tell the columns.
  const short = delimiter === 'space' && leastColumns < widest;
  const cuts = short
    ? fixedWidthCuts(
        rows.map((at) => texts[at] ?? ''),
        widest,
      )
    : undefined;
  // A heading above columns of spaces may hold words with single spaces: `Time (s)   Bond line (C)`.
  const headed = lines.map((cells, at) => {
    if (at === headingAt) return headingCells((texts[at] ?? '').replace(COMMENT, ''), delimiter, widest);
    if (cuts !== undefined && at >= firstRow && cells.length < widest)
      return fixedWidthCells(texts[at] ?? '', cuts) ?? cells;
    if (delimiter !== 'space' || at >= firstRow || cells.length === widest) return cells;
    const wide = (texts[at] ?? '').trim().split(/\s{2,}|\t+/);
    return wide.length === widest ? wide : cells;
  });
  return {
    delimiter,
    decimal,
    lines: headed,
    firstRow,
    rows: rows.filter((at) => at >= firstRow && (!short || headed[at]?.length === widest)),
    columnCount: widest,
    leastColumns: short ? widest : leastColumns,
    ...(cuts === undefined ? {} : { cuts }),
  };
}

/** The comment right above the first row, where a heading may stand behind the comment's sign; -1 where there is none. */
function commentedHeading(texts: readonly string[], firstRow: number): number {
  const at = texts.slice(0, firstRow).findLastIndex((text) => text.trim() !== '');
  return isComment(texts[at] ?? '') ? at : -1;
}

/** Cells of a heading behind a comment's sign; none where they are not as many as the columns or tell nothing. */
function headingCells(text: string, delimiter: Delimiter, columnCount: number): readonly string[] {
  const wide = text.trim().split(/\s{2,}|\t+/);
  const plain = loggerCells(text, delimiter);
  const cells = delimiter === 'space' && wide.length === columnCount ? wide : plain;
  const tells = cells.some((cell) => headingMeaning(cell) !== 'unknown' || temperatureUnitInHeading(cell));
  return cells.length === columnCount && tells ? cells : [];
}

/** The first row whose cells are of the kinds that the later rows have: a line such as `Run,1,2,3` is none. */
function firstOfBlock(
  rows: readonly number[],
  lines: readonly (readonly string[])[],
  decimal: DecimalSign,
): number | undefined {
  const late = rows.slice(rows.length >> 1).slice(0, 50);
  const texts = new Set<number>();
  for (const at of late) {
    lines[at]?.forEach((cell, column) => {
      if (loggerCellKind(cell, decimal) === 'text') texts.add(column);
    });
  }
  return rows.find((at) =>
    lines[at]?.every((cell, column) => texts.has(column) || loggerCellKind(cell, decimal) !== 'text'),
  );
}
