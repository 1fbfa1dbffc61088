import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { DecimalSign } from '../wire/plain/read-number.ts';
import type { TemperatureUnit } from '../wire/plain/temperature-unit.ts';

/** What the user says about a file of another logger. Columns by heading, or by number from 1. */
export interface LoggerFileOptions {
  readonly timeColumn?: string;
  /** The first is the bond line. */
  readonly temperatureColumns?: readonly string[];
  /** What each temperature column is laid on, in their order; else by headings. */
  readonly roles?: readonly ChannelRole[];
  readonly unit?: TemperatureUnit;
  readonly timeUnit?: 's' | 'ms' | 'us' | 'min' | 'h';
  /** Seconds from row to row, for a file without a time column. */
  readonly intervalS?: number;
  /** For a file with one channel per row: the rows to read, as `column=value`, such as `Sensor=Bond line`. */
  readonly rows?: string;
}

export type Delimiter = ',' | ';' | '\t' | '|' | 'space';

/** Order of day, month and year where the year does not stand first. */
export type DateOrder = 'day-first' | 'month-first';

/** What stands first in a clock of two numbers such as `10:30`: hours (then minutes) or minutes (then seconds). */
export type ShortClock = 'h' | 'min';

/** Where a row's time comes from. Columns count from 0. */
export type LoggerTime =
  | { readonly kind: 'number'; readonly column: number; readonly tickUs: number }
  /** One column, or a date column and a clock column. */
  | {
      readonly kind: 'stamp';
      readonly columns: readonly number[];
      readonly order: DateOrder;
      readonly short: ShortClock | null;
    }
  | { readonly kind: 'interval'; readonly intervalUs: number };

export interface LoggerTemperature {
  readonly column: number;
  readonly heading: string | null;
  readonly unit: TemperatureUnit;
  readonly role: ChannelRole;
}

/** How a logger's file is laid out. Plain data: can be stored beside a recording and used again. */
export interface LoggerLayout {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalSign;
  /** Lines before the first row of values, counted as `loggerLines` gives them. */
  readonly leadingLines: number;
  /** Heading and preamble lines, trimmed, to know them when they come again. */
  readonly headingTexts: readonly string[];
  /** Rows name their values (`T1=21.5 C`) and are read without the names. */
  readonly labelled: boolean;
  readonly columnCount: number;
  /** Fewest columns of a whole row (some loggers leave empty last fields out). */
  readonly leastColumns: number;
  readonly time: LoggerTime;
  readonly temperatures: readonly LoggerTemperature[];
  /** Set where several rows share one time: they are spread evenly over `stepUs`. */
  readonly sharedTimes: { readonly stepUs: number; readonly rowsPerStep: number } | null;
  /** Smallest step in which the file's times are written, s; half of it limits every time. */
  readonly timeResolutionS: number;
  /** Where columns of a fixed width end, in characters, but for the last; only where rows leave fields empty. */
  readonly cuts?: readonly number[];
  /** Only rows that hold this text in this column are read; the others belong to other channels. */
  readonly only?: { readonly column: number; readonly text: string };
  /** Decimals of the last column where every row has as many; null where they differ. */
  readonly lastColumnDecimals: number | null;
  /** For people, neutralised. */
  readonly recognised: string;
}
