import { resolve } from 'node:path';
import { LoggerFileProblem } from '../../core/logger-file/LoggerFileProblem.ts';
import { openLoggerFile } from '../../core/logger-file/open-logger-file.ts';
import { loggerFileOptions } from './logger-file-options.ts';
import type { Source, SourceOptions } from './Source.ts';

/** Another logger's file, ready to replay. */
export function loggerSource(name: string, bytes: Uint8Array, options: SourceOptions): Source {
  const file = named(name, () => openLoggerFile(bytes, loggerFileOptions(options)));
  return {
    name,
    identity: name === '-' ? name : resolve(name),
    head: null,
    decoder: file.decoder,
    roles: file.roles,
    timeStepS: file.layout.timeResolutionS,
    entries: () => file.entries,
    soundness: () => ({ kind: 'sound' }),
  };
}

/** A file that cannot be used as it stands is named: it may be one of many. */
function named<Result>(name: string, open: () => Result): Result {
  try {
    return open();
  } catch (error) {
    throw error instanceof LoggerFileProblem && name !== '-' ? error.inFile(name) : error;
  }
}
