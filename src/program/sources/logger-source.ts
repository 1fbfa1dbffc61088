import { resolve } from 'node:path';
import { openLoggerFile } from '../../core/logger-file/open-logger-file.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import type { Source, SourceOptions } from './Source.ts';

/** Another logger's file, ready to replay. */
export function loggerSource(name: string, bytes: Uint8Array, options: SourceOptions): Source {
  const file = openLoggerFile(bytes, {
    ...(options.timeColumn === undefined ? {} : { timeColumn: options.timeColumn }),
    ...(options.temperatureColumn === undefined ? {} : { temperatureColumns: options.temperatureColumn }),
    ...(options.unit === undefined ? {} : { unit: options.unit }),
    ...(options.timeUnit === undefined ? {} : { timeUnit: options.timeUnit }),
    ...(options.interval === undefined ? {} : { intervalS: parseDuration(options.interval, '--interval') }),
  });
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
