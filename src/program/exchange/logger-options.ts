import { closest } from 'fastest-levenshtein';
import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import type { LoggerFileOptions } from '../../core/logger-file/LoggerLayout.ts';
import type { Store } from '../../core/store/Store.ts';
import { exchangeRefusals } from '../../core/text/exchange-text.ts';
import { loggerFileOptions } from '../sources/logger-file-options.ts';
import type { ImportOptions } from './ImportOptions.ts';

/** How a logger's file is read: what the named layout says, each option before it. */
export function loggerOptions(store: Store, options: ImportOptions): LoggerFileOptions {
  const stored = options.layout === undefined ? {} : namedLayout(store, options.layout);
  const { timeColumn, intervalS, ...rest } = stored;
  const timed = options.timeColumn !== undefined || options.interval !== undefined;
  return {
    ...rest,
    ...(timed || timeColumn === undefined ? {} : { timeColumn }),
    ...(timed || intervalS === undefined ? {} : { intervalS }),
    ...loggerFileOptions(options),
  };
}

function namedLayout(store: Store, name: string): LoggerFileOptions {
  const layouts = store.exchange.layouts();
  const found = layouts.find((one) => one.name === name.trim());
  if (found !== undefined) return found.options;
  const names = layouts.map((one) => one.name);
  throw new ExchangeError(
    'layout-unknown',
    exchangeRefusals.layoutUnknown(name, names.length === 0 ? null : closest(name, names)),
  );
}
