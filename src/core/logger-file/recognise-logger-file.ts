import { decimalsOf } from '../wire/plain/read-number.ts';
import { channelPerRow } from './channel-per-row.ts';
import { columnProfile } from './column-profile.ts';
import { columnInWords, columnsInWords } from './columns-in-words.ts';
import { commaTwice } from './comma-twice.ts';
import { findHeadings } from './find-headings.ts';
import { findTable, type LoggerTable } from './find-table.ts';
import { findTemperatures } from './find-temperatures.ts';
import { findTime } from './find-time.ts';
import { headingsCompleted, withLabels } from './headings-completed.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';
import type { LoggerFileOptions, LoggerLayout } from './LoggerLayout.ts';
import { timeColumns } from './logger-file-entries.ts';
import { loggerLines } from './logger-lines.ts';
import { onlyRows, shown } from './only-rows.ts';
import { rowTiming } from './row-timing.ts';
import { unlabelled } from './unlabelled.ts';

/** Lines of the head that are looked at. */
const MOST_HEAD_LINES = 3000;
const MOST_HEADING_TEXTS = 40;
const DELIMITER_WORDS = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'bars',
  space: 'spaces',
} as const;

/**
 * Recognises the layout of another logger's file from its head: delimiter, decimal sign, heading lines,
 * the time column and its unit, the temperature columns and their unit. What is not unambiguous must be
 * said by an option; the problem names the columns seen and the options to add. Never throws.
 */
export function recogniseLoggerFile(
  head: string,
  options: LoggerFileOptions = {},
): LoggerLayout | LoggerFileProblem {
  if (head.trim() === '') {
    return new LoggerFileProblem(
      'logger-file-empty',
      'rows of values were expected, but the file is empty',
      'check that the logger had finished writing the file',
    );
  }
  if (/[\x00-\x08\x0e-\x1a\x1c-\x1f]/.test(head.slice(0, 4000))) {
    return new LoggerFileProblem(
      'logger-file-not-text',
      'a text file was expected, but the file holds binary data',
      'export the log as CSV or text from the logger or spreadsheet program',
    );
  }
  const texts: string[] = [];
  for (const line of loggerLines(head)) {
    texts.push(line.text);
    if (texts.length >= MOST_HEAD_LINES) break;
  }
  const plain = findTable(texts);
  const table = plain ?? findTable(texts.map(unlabelled));
  if (!table) {
    return new LoggerFileProblem(
      'logger-file-no-rows',
      'rows of numbers separated by commas, semicolons, tabs or spaces were expected, none was found',
      'export the log as CSV with one row per reading',
    );
  }
  return layoutOf(table, texts, options, !plain);
}

function layoutOf(
  whole: LoggerTable,
  texts: readonly string[],
  options: LoggerFileOptions,
  labelled: boolean,
): LoggerLayout | LoggerFileProblem {
  const leading = texts.slice(0, whole.firstRow);
  const found = labelled ? withLabels(findHeadings(whole), texts[whole.firstRow] ?? '') : findHeadings(whole);
  const twice = labelled ? null : commaTwice(whole, found.names);
  if (twice !== null) return twice;
  const picked =
    options.rows === undefined
      ? { table: whole, only: undefined }
      : onlyRows(whole, found.names, options.rows);
  if (picked instanceof LoggerFileProblem) return picked;
  const { table, only } = picked;
  const profiles = found.names.map((_, column) => columnProfile(table, column));
  const headings = headingsCompleted(found, profiles, leading.slice(0, table.firstRow - found.lines));
  const time = findTime(headings, profiles, options);
  const temperatures = findTemperatures(
    headings,
    profiles,
    time instanceof LoggerFileProblem ? null : time.time,
    options,
  );
  if (time instanceof LoggerFileProblem) {
    return temperatures instanceof LoggerFileProblem ? bothProblems(time, temperatures) : time;
  }
  if (temperatures instanceof LoggerFileProblem) return temperatures;
  const used = [...temperatures.temperatures.map(({ column }) => column), ...timeColumns(time.time)];
  const long = channelPerRow(table, headings.names, profiles, used);
  if (long !== null) return long;
  const times = rowTiming(table, time.time);
  if (times === 'backwards') {
    return new LoggerFileProblem(
      'logger-file-time-unknown',
      `times that move on from row to row were expected, but they run back all the way (${time.words}): the latest row seems to stand first`,
      'sort the rows by time, the earliest first, in a spreadsheet or by the logger’s export, and save the file as CSV',
    );
  }
  if (!times) {
    return new LoggerFileProblem(
      'logger-file-time-unknown',
      `times that move on from row to row were expected, but they stand still or run back (${time.words}); columns: ${columnsInWords(headings.names)}`,
      'give --time-column another column, or --interval 0.5s if the rows came at even intervals',
    );
  }
  const shape = `${table.columnCount === 1 ? 'one column' : `${table.columnCount} columns separated by ${DELIMITER_WORDS[table.delimiter]}`}${table.decimal === ',' ? ', decimal comma' : ''}`;
  const shared = times.sharedTimes
    ? `; ${times.sharedTimes.rowsPerStep} rows share a time, spread evenly over ${times.sharedTimes.stepUs / 1e6} s`
    : '';
  return Object.freeze({
    delimiter: table.delimiter,
    decimal: table.decimal,
    leadingLines: table.firstRow,
    headingTexts: leading
      .map((text) => text.trim())
      .filter((text) => text !== '')
      .slice(-MOST_HEADING_TEXTS),
    labelled,
    columnCount: table.columnCount,
    leastColumns: table.leastColumns,
    time: time.time,
    temperatures: temperatures.temperatures,
    ...times,
    ...(table.cuts === undefined || labelled ? {} : { cuts: table.cuts }),
    ...(only === undefined ? {} : { only }),
    lastColumnDecimals: lastDecimals(table),
    recognised: `${shape}; ${time.words}; ${temperatures.words}${shared}${only === undefined ? '' : `; only rows that hold ${shown([only.text])} in ${columnInWords(headings.names, only.column)}`}`,
  });
}

function bothProblems(time: LoggerFileProblem, other: LoggerFileProblem): LoggerFileProblem {
  return new LoggerFileProblem(
    'logger-file-time-unknown',
    `${time.message}; besides, ${other.message}`,
    `${time.remedy}; ${other.remedy}`,
  );
}

function lastDecimals(table: LoggerTable): number | null {
  const full = table.rows
    .slice(0, -1)
    .map((at) => table.lines[at] ?? [])
    .filter((cells) => cells.length === table.columnCount);
  const decimals = new Set(
    full.flatMap((cells) => {
      const cell = cells.at(-1) ?? '';
      return cell === '' ? [] : [decimalsOf(cell, table.decimal)];
    }),
  );
  const [only] = decimals;
  return decimals.size === 1 && only !== undefined ? only : null;
}
