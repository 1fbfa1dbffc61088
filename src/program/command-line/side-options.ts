import { type Command, Option } from 'commander';

/** The two sides of a comparison of warm-ups: recordings by name, or a press of the store and days. */
export function addSideOptions(command: Command): Command {
  return command
    .option('--first <recordings...>', 'first press, or before: files, or recordings of the store by id')
    .option('--second <recordings...>', 'second press, or after: files, or recordings of the store by id')
    .option('--first-press <name>', 'first: every stored warm-up of this press')
    .option(
      '--second-press <name>',
      'second: every stored warm-up of this press (the first’s where only days are given)',
    )
    .option('--first-dates <days>', 'first: made on these days, such as 2026-03-01/2026-06-30 or /2026-06-30')
    .option('--second-dates <days>', 'second: made on these days, such as 2026-07-01/')
    .addOption(heatingOption())
    .option('--names <list>', 'names of the two, parted by a comma');
}

/** Which heating of a recording that holds several. */
export function heatingOption(): Option {
  return new Option(
    '--heating <number>',
    'only this heating of a recording that holds several (all unless stated)',
  );
}
