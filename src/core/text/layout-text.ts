import type { SavedLayout } from '../exchange/StoreExchange.ts';
import { neutralise } from './neutralise.ts';

/** One line about a named layout: what it says, in the words of the options. */
export function layoutLine({ name, options }: SavedLayout): string {
  const said = [
    options.timeColumn === undefined ? null : `time column ${neutralise(options.timeColumn)}`,
    options.timeUnit === undefined ? null : `times in ${options.timeUnit}`,
    options.intervalS === undefined ? null : `rows ${options.intervalS} s apart`,
    options.temperatureColumns === undefined
      ? null
      : `bond line from ${options.temperatureColumns.map((one) => neutralise(one)).join(', ')}`,
    options.roles === undefined ? null : `laid on ${options.roles.join(', ')}`,
    options.rows === undefined ? null : `only rows with ${neutralise(options.rows)}`,
    options.unit === undefined ? null : `temperatures in ${options.unit === 'K' ? 'K' : `°${options.unit}`}`,
  ].filter((part) => part !== null);
  return `${neutralise(name)}: ${said.length === 0 ? 'everything as the file itself says' : said.join(', ')}`;
}
