import { headingMeaning, tickUsInHeading } from '../wire/plain/heading-words.ts';
import { decimalsOf } from '../wire/plain/read-number.ts';
import {
  type TemperatureUnit,
  temperatureUnitInHeading,
  wholeTemperatureUnit,
} from '../wire/plain/temperature-unit.ts';
import { type ColumnProfile, columnProfile } from './column-profile.ts';
import { columnsInWords } from './columns-in-words.ts';
import { createRowClock } from './create-row-clock.ts';
import { findHeadings, type LoggerHeadings } from './find-headings.ts';
import { findTable, type LoggerTable } from './find-table.ts';
import { findTemperatures } from './find-temperatures.ts';
import { findTime } from './find-time.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';
import type { LoggerFileOptions, LoggerLayout, LoggerTime } from './LoggerLayout.ts';
import { loggerLines } from './logger-lines.ts';
import { readStamp } from './read-stamp.ts';
import { labelsOf, unlabelled } from './unlabelled.ts';

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
  table: LoggerTable,
  texts: readonly string[],
  options: LoggerFileOptions,
  labelled: boolean,
): LoggerLayout | LoggerFileProblem {
  const leading = texts.slice(0, table.firstRow);
  const found = labelled ? withLabels(findHeadings(table), texts[table.firstRow] ?? '') : findHeadings(table);
  const profiles = found.names.map((_, column) => columnProfile(table, column));
  const beside = {
    ...found,
    units: found.units.map((unit, column) => unit ?? unitBeside(profiles[column + 1])),
  };
  const headings = withUnitSaid(beside, profiles, leading.slice(0, table.firstRow - found.lines));
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
  const times = timing(table, time.time);
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
    lastColumnDecimals: lastDecimals(table),
    recognised: `${shape}; ${time.words}; ${temperatures.words}${shared}`,
  });
}

/** Names that stand in the rows themselves, for the last columns (a stamp in front has none). */
function withLabels(headings: LoggerHeadings, row: string): LoggerHeadings {
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

function bothProblems(time: LoggerFileProblem, other: LoggerFileProblem): LoggerFileProblem {
  return new LoggerFileProblem(
    'logger-file-time-unknown',
    `${time.message}; besides, ${other.message}`,
    `${time.remedy}; ${other.remedy}`,
  );
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

/** Whether rows share times, and how finely times are written. Undefined where they stand still or mostly run back. */
function timing(
  table: LoggerTable,
  time: LoggerTime,
): Pick<LoggerLayout, 'sharedTimes' | 'timeResolutionS'> | undefined {
  if (time.kind === 'interval') return { sharedTimes: null, timeResolutionS: 0 };
  const clock = createRowClock(time, table.decimal);
  const timesUs = table.rows.flatMap((at) => clock(table.lines[at] ?? []) ?? []);
  if (timesUs.length === 0) return undefined;
  const groups: number[] = [];
  let smallest = Number.POSITIVE_INFINITY;
  timesUs.forEach((timeUs, at) => {
    const step = timeUs - (timesUs[at - 1] ?? Number.NEGATIVE_INFINITY);
    if (step === 0) groups[groups.length - 1] = (groups.at(-1) ?? 0) + 1;
    else groups.push(1);
    if (step > 0 && step < smallest) smallest = step;
  });
  const forward = timesUs.filter(
    (timeUs, at) => timeUs > (timesUs[at - 1] ?? Number.POSITIVE_INFINITY),
  ).length;
  if (timesUs.length > 1 && forward * 2 < groups.length - 1 + (groups.length === 1 ? 1 : 0)) return undefined;
  const inner = groups.slice(1, -1).toSorted((a, b) => a - b);
  const rowsPerStep = inner[inner.length >> 1] ?? Math.max(...groups);
  const writtenUs = writtenStepUs(table, time);
  const several = groups.filter((rows) => rows > 1).length;
  // A row or two written twice are no habit.
  const shares = several >= 0.5 * groups.length || (several >= 3 && several >= 0.2 * groups.length);
  return shares
    ? {
        sharedTimes: { stepUs: smallest, rowsPerStep: Math.max(2, rowsPerStep) },
        timeResolutionS: smallest / 1e6,
      }
    : { sharedTimes: null, timeResolutionS: writtenUs / 1e6 };
}

function writtenStepUs(table: LoggerTable, time: Exclude<LoggerTime, { kind: 'interval' }>): number {
  let stepUs = Number.POSITIVE_INFINITY;
  for (const at of table.rows) {
    const cells = table.lines[at] ?? [];
    const step =
      time.kind === 'number'
        ? time.tickUs / 10 ** Math.max(0, decimalsOf(cells[time.column] ?? '', table.decimal))
        : readStamp(time.columns.map((column) => cells[column] ?? '').join(' '), time.order, time.short)
            ?.stepUs;
    if (step !== undefined && step < stepUs) stepUs = step;
  }
  return Number.isFinite(stepUs) ? stepUs : 0;
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
