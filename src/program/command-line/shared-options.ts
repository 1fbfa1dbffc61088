import { Option } from 'commander';

/** Shared by every command that shows temperatures. */
export const showOption = (): Option =>
  new Option('--show <unit>', 'show temperatures in °F or °C').choices(['F', 'C']).default('F');

export const storeOption = (): Option =>
  new Option('--store <file>', 'store file (else DWELLWRIGHT_STORE, else the data folder)');

export const jsonOption = (): Option =>
  new Option('--json', 'print the result as JSON, units in the key names');

/** An action that loads its module only when it is called. */
export function lazily(load: () => Promise<unknown>): (...args: unknown[]) => Promise<void> {
  return async (...args) => ((await load()) as (...args: unknown[]) => Promise<void>)(...args);
}
