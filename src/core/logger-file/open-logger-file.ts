import type { ChannelRole, RecordingEntry } from '../recording/RecordingEntry.ts';
import type { LineDecoder } from '../wire/WireEvent.ts';
import { createLoggerFileDecoder } from './create-logger-file-decoder.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';
import type { LoggerFileOptions, LoggerLayout } from './LoggerLayout.ts';
import { loggerFileEntries } from './logger-file-entries.ts';
import { loggerFileText } from './logger-file-text.ts';
import { recogniseLoggerFile } from './recognise-logger-file.ts';

const HEAD_LENGTH = 262_144;

/** A logger's file, ready for the pipeline. */
export interface LoggerFile {
  readonly layout: LoggerLayout;
  /** Channel 1 first. */
  readonly roles: readonly ChannelRole[];
  readonly entries: Iterable<RecordingEntry>;
  readonly decoder: LineDecoder;
}

/** The part of a file's text that its layout is recognised from: whole lines, up to 256 K characters. */
function headOf(text: string): string {
  if (text.length <= HEAD_LENGTH) return text;
  const head = text.slice(0, HEAD_LENGTH);
  const end = Math.max(head.lastIndexOf('\n'), head.lastIndexOf('\r'));
  return end > 0 ? head.slice(0, end + 1) : head;
}

/** Opens the file of another logger from its bytes: text, layout, entries and decoder. Throws LoggerFileProblem. */
export function openLoggerFile(bytes: Uint8Array, options: LoggerFileOptions = {}): LoggerFile {
  const text = loggerFileText(bytes);
  if (text instanceof LoggerFileProblem) throw text;
  const layout = recogniseLoggerFile(headOf(text), options);
  if (layout instanceof LoggerFileProblem) throw layout;
  return {
    layout,
    roles: layout.temperatures.map((temperature) => temperature.role),
    entries: { [Symbol.iterator]: () => loggerFileEntries(text, layout) },
    decoder: createLoggerFileDecoder(layout),
  };
}
