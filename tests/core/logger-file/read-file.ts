import { LoggerFileProblem } from '../../../src/core/logger-file/LoggerFileProblem.ts';
import type { LoggerFileOptions, LoggerLayout } from '../../../src/core/logger-file/LoggerLayout.ts';
import { openLoggerFile } from '../../../src/core/logger-file/open-logger-file.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import type { SampleEvent, WireEvent } from '../../../src/core/wire/WireEvent.ts';

export interface ReadFile {
  readonly layout: LoggerLayout;
  readonly entries: readonly RecordingEntry[];
  readonly events: readonly WireEvent[];
  readonly samples: readonly SampleEvent[];
  /** Seconds from the first row, by the file's own clock. */
  readonly timesS: readonly number[];
  /** First channel, rounded to 1e-6 °C; fault or kind where there is no temperature. */
  readonly values: readonly (number | string)[];
  readonly troubles: readonly string[];
}

/** Takes a file through bytes, recognition, entries and decoder. Throws LoggerFileProblem. */
export function readFile(file: string | Uint8Array, options: LoggerFileOptions = {}): ReadFile {
  const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file;
  const opened = openLoggerFile(bytes, options);
  const entries = [...opened.entries];
  const events = entries.flatMap((entry) => (entry.kind === 'line' ? opened.decoder.decode(entry) : []));
  const samples = events.filter((event) => event.kind === 'sample');
  const firstUs = samples[0]?.deviceTimeUs ?? 0;
  return {
    layout: opened.layout,
    entries,
    events,
    samples,
    timesS: samples.map((sample) => ((sample.deviceTimeUs ?? Number.NaN) - firstUs) / 1e6),
    values: samples.map((sample) => {
      const value = sample.channels[0];
      if (value?.kind === 'temperature') return Math.round(value.temperatureC * 1e6) / 1e6;
      return value?.kind === 'fault' ? value.fault : (value?.kind ?? 'none');
    }),
    troubles: events.flatMap((event) => (event.kind === 'trouble' ? [event.trouble] : [])),
  };
}

/** The problem that a file is refused with. */
export function problemOf(file: string | Uint8Array, options: LoggerFileOptions = {}): LoggerFileProblem {
  try {
    readFile(file, options);
  } catch (error) {
    if (error instanceof LoggerFileProblem) return error;
    throw error;
  }
  throw new Error('the file was expected to be refused, but was read');
}
