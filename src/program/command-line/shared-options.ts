import { type Command, Option } from 'commander';

/** Shared by every command that shows temperatures. */
export const showOption = (): Option =>
  new Option('--show <unit>', 'show temperatures in °F or °C').choices(['F', 'C']).default('F');

export const storeOption = (): Option =>
  new Option(
    '--store <file>',
    'store file (else DWELLWRIGHT_STORE, else the data folder); demo: the demo’s own',
  );

export const jsonOption = (): Option =>
  new Option('--json', 'print the result as JSON, units in the key names');

/** An action that loads its module only when it is called. */
export function lazily(load: () => Promise<unknown>): (...args: unknown[]) => Promise<void> {
  return async (...args) => ((await load()) as (...args: unknown[]) => Promise<void>)(...args);
}

/** An option that may be repeated: its values in the order given. */
export const repeated = (value: string, before: readonly string[] | undefined): readonly string[] => [
  ...(before ?? []),
  value,
];

/** An option that holds several values parted by commas, and may be repeated. */
export const separated = (value: string, before: readonly string[] | undefined): readonly string[] => [
  ...(before ?? []),
  ...value.split(',').map((part) => part.trim()),
];

/** How another logger's file is to be read, for every command that reads one whole. */
export function addLoggerColumns(command: Command): Command {
  return command
    .option('--time-column <name>', 'logger file: heading or number (from 1) of the time column')
    .option(
      '--temperature-column <name>',
      'logger file: heading or number of the bond-line column (may be repeated)',
      repeated,
    )
    .addOption(new Option('--unit <unit>', 'logger file: unit of the temperatures').choices(['C', 'F', 'K']))
    .addOption(
      new Option('--time-unit <unit>', 'logger file: unit of the times').choices([
        's',
        'ms',
        'us',
        'min',
        'h',
      ]),
    )
    .option('--interval <duration>', 'logger file without times: time between rows')
    .option(
      '--rows <column=value>',
      'logger file with one channel per row: the rows to read, such as "Sensor=Bond line"',
    );
}
