import type { LoggerFileOptions } from '../../core/logger-file/LoggerLayout.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseRoles } from '../options/run-rules.ts';
import type { SourceOptions } from './Source.ts';

/** How the user says that another logger's file is to be read; only what was given. */
export function loggerFileOptions(options: SourceOptions): LoggerFileOptions {
  return {
    ...(options.timeColumn === undefined ? {} : { timeColumn: options.timeColumn }),
    ...(options.temperatureColumn === undefined ? {} : { temperatureColumns: options.temperatureColumn }),
    ...(options.roles === undefined ? {} : { roles: parseRoles(options.roles, '--roles', options) }),
    ...(options.unit === undefined ? {} : { unit: options.unit }),
    ...(options.timeUnit === undefined ? {} : { timeUnit: options.timeUnit }),
    ...(options.interval === undefined ? {} : { intervalS: parseDuration(options.interval, '--interval') }),
    ...(options.rows === undefined ? {} : { rows: options.rows }),
  };
}
