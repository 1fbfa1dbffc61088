import type { ColumnProfile } from './column-profile.ts';
import { columnInWords, columnsInWords } from './columns-in-words.ts';
import { findColumn } from './find-column.ts';
import type { LoggerHeadings } from './find-headings.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';
import type { LoggerFileOptions, LoggerTime } from './LoggerLayout.ts';
import { isDaySerial, likeliestTimeColumn, splitClock } from './likeliest-time-column.ts';
import { dateOrder, isShortClock } from './read-stamp.ts';
import { timeColumnOfItsOwn } from './time-columns-of-their-own.ts';

export const TICKS_US = { us: 1, ms: 1e3, s: 1e6, min: 60e6, h: 3600e6 } as const;
const TICK_WORDS: Readonly<Record<number, string>> = {
  1: 'microseconds',
  1e3: 'milliseconds',
  1e6: 'seconds',
  60e6: 'minutes',
  3600e6: 'hours',
};
/** Whole-number times that step by this much or more could as well be milliseconds as seconds. */
const STEP_IN_DOUBT = 20;
/** `093015` may be half past nine and fifteen seconds. */
const CLOCK_DIGITS = /^(?:[01]\d|2[0-3])[0-5]\d[0-5]\d$/;

export interface FoundTime {
  readonly time: LoggerTime;
  readonly words: string;
}

/** Finds the column, or the two, that hold the time of a row, and what its numbers count. */
export function findTime(
  headings: LoggerHeadings,
  profiles: readonly ColumnProfile[],
  options: LoggerFileOptions,
): FoundTime | LoggerFileProblem {
  const { names } = headings;
  if (options.intervalS !== undefined) return fromInterval(options);
  if (options.timeColumn === undefined) {
    if (splitClock(names)) return noTime(names);
    const own = timeColumnOfItsOwn(names, profiles, options.temperatureColumns ?? []);
    if (own instanceof LoggerFileProblem) return own;
    if (own !== null) return fromColumn(own, headings, profiles, options);
    const column = likeliestTimeColumn(headings, profiles);
    return column === undefined ? noTime(names) : fromColumn(column, headings, profiles, options);
  }
  const column = findColumn(names, options.timeColumn);
  if (column === undefined) {
    return new LoggerFileProblem(
      'logger-file-column-unknown',
      `the file has no time column "${options.timeColumn}"; columns: ${columnsInWords(names)}`,
      'give --time-column one of these headings or numbers',
    );
  }
  return fromColumn(column, headings, profiles, options);
}

function fromInterval(options: LoggerFileOptions): FoundTime | LoggerFileProblem {
  const { intervalS = 0, timeColumn } = options;
  if (timeColumn !== undefined || !(intervalS > 0 && intervalS <= 86_400)) {
    return new LoggerFileProblem(
      'logger-file-option',
      timeColumn !== undefined
        ? 'the rows are timed either by a column or by an interval, both were given'
        : 'an interval above 0 s and up to a day was expected',
      'give --time-column or --interval, for example --interval 0.5s',
    );
  }
  return {
    time: { kind: 'interval', intervalUs: intervalS * 1e6 },
    words: `no time column used, rows ${intervalS} s apart as stated by you`,
  };
}

function noTime(names: readonly (string | null)[]): LoggerFileProblem {
  return new LoggerFileProblem(
    'logger-file-time-unknown',
    `no column is plainly the time of a row; columns: ${columnsInWords(names)}`,
    'add --time-column with a heading or number (and --time-unit s, ms, min or h), or --interval 0.5s if the rows came at even intervals',
  );
}

function fromColumn(
  column: number,
  headings: LoggerHeadings,
  profiles: readonly ColumnProfile[],
  options: LoggerFileOptions,
): FoundTime | LoggerFileProblem {
  const profile = profiles[column];
  const where = columnInWords(headings.names, column);
  if (profile?.kind === 'date-and-clock') return fromStamps([column], profiles, where);
  if (profile?.kind === 'short-clock') return fromShortClock(column, profiles, headings, options, where);
  if (profile?.kind === 'clock' || profile?.kind === 'date') {
    const partner = profiles.findIndex((one) =>
      profile.kind === 'clock' ? one.kind === 'date' : one.kind === 'clock' || one.kind === 'short-clock',
    );
    if (partner >= 0) {
      const columns = profile.kind === 'clock' ? [partner, column] : [column, partner];
      return fromStamps(
        columns,
        profiles,
        `${columnInWords(headings.names, columns[0] ?? 0)} and ${columnInWords(headings.names, columns[1] ?? 0)}`,
      );
    }
    if (profile.kind === 'clock') return fromStamps([column], profiles, where);
  }
  if (profile?.kind !== 'number') {
    return new LoggerFileProblem(
      'logger-file-time-unknown',
      `${where} was expected to hold times, but holds ${profile?.kind === 'date' ? 'dates without a clock' : profile?.kind === 'empty' ? 'nothing' : 'text'}${example(profile)}`,
      'give --time-column another column; times may be seconds, milliseconds or stamps such as 2024-05-01 10:00:00',
    );
  }
  return fromNumbers(column, profile, headings, options, where);
}

function example(profile: ColumnProfile | undefined): string {
  const text = profile?.texts[0];
  return text === undefined ? '' : `, for example "${text.replace(/[^\x20-\x7e]/g, '?').slice(0, 30)}"`;
}

function fromShortClock(
  column: number,
  profiles: readonly ColumnProfile[],
  headings: LoggerHeadings,
  options: LoggerFileOptions,
  where: string,
): FoundTime | LoggerFileProblem {
  const date = profiles.findIndex((profile) => profile.kind === 'date');
  if (date >= 0)
    return fromStamps([date, column], profiles, `${columnInWords(headings.names, date)} and ${where}`);
  const fraction = profiles[column]?.texts.some((text) => isShortClock(text) === 'fraction');
  const short = fraction ? 'min' : options.timeUnit;
  if (short !== 'h' && short !== 'min') {
    return new LoggerFileProblem(
      'logger-file-time-unit-unknown',
      `${where} holds times such as "${profiles[column]?.texts[0] ?? ''}", which could be hours and minutes or minutes and seconds`,
      'add --time-unit h if the first number is hours, --time-unit min if it is minutes',
    );
  }
  const words = `time from ${where} in ${short === 'h' ? 'hours and minutes' : 'minutes and seconds'}`;
  return { time: { kind: 'stamp', columns: [column], order: 'month-first', short }, words };
}

function fromStamps(
  columns: readonly number[],
  profiles: readonly ColumnProfile[],
  where: string,
): FoundTime {
  const texts = columns.flatMap((column) => profiles[column]?.texts ?? []);
  const order = dateOrder(texts);
  const yearLast = texts.some((text) => /^\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4}/.test(text));
  const taken = yearLast && order === null ? ', month before day (the dates fit both ways)' : '';
  return {
    time: { kind: 'stamp', columns, order: order ?? 'month-first', short: null },
    words: `time from clock stamps in ${where}${taken}`,
  };
}

function fromNumbers(
  column: number,
  profile: ColumnProfile,
  headings: LoggerHeadings,
  options: LoggerFileOptions,
  where: string,
): FoundTime | LoggerFileProblem {
  const found = (tickUs: number, how: string): FoundTime => ({
    time: { kind: 'number', column, tickUs },
    words: `time from ${where} in ${TICK_WORDS[tickUs] ?? 'days'}${how}`,
  });
  if (options.timeUnit) return found(TICKS_US[options.timeUnit], ' as stated by you');
  const headed = headings.ticksUs[column];
  if (headed) return found(headed, ' from the heading');
  const first = profile.values[0] ?? 0;
  // Seconds, milliseconds and microseconds since 1970 for any date from 2001 to 2286 are this long.
  if (first >= 1e9 && first < 1e10) return found(1e6, ' since 1970');
  if (first >= 1e12 && first < 1e13) return found(1e3, ' since 1970');
  if (first >= 1e15 && first < 1e16) return found(1, ' since 1970');
  if (isDaySerial(profile)) return found(86_400e6, ', as spreadsheets count them');
  const steps = profile.values.slice(1).map((value, at) => value - (profile.values[at] ?? value));
  const step = steps.filter((one) => one > 0).toSorted((a, b) => a - b)[0] ?? 0;
  if (profile.decimals === 0 && step >= STEP_IN_DOUBT) {
    return new LoggerFileProblem(
      'logger-file-time-unit-unknown',
      `${where} counts in steps of ${step} without saying in what unit`,
      `add --time-unit ms (or s, us, min, h)`,
    );
  }
  if (profile.texts.every((text) => CLOCK_DIGITS.test(text))) {
    return new LoggerFileProblem(
      'logger-file-time-unit-unknown',
      `${where} holds six digits such as "${profile.texts[0] ?? ''}", which could be a clock or a count`,
      'write the clock with colons (10:00:00) where it is one; where it is a count, add --time-unit s (or ms, min, h)',
    );
  }
  return found(1e6, ' (no unit stated, taken as seconds)');
}
