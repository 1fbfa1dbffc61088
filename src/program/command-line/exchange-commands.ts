import { Argument, type Command, Option } from 'commander';
import { addCureOptions } from './numbers-commands.ts';
import { addLoggerColumns, jsonOption, lazily, showOption, storeOption } from './shared-options.ts';

/** Commands that bring data into the store and hand it out, bring stores together, back them up and check them. */
export function addExchangeCommands(program: Command): void {
  addLoggerColumns(
    addCureOptions(program.command('import <files...>'))
      .description('bring other loggers’ files and recordings into the store, each into a trial')
      .option('--trial <id>', 'trial to put them in, there already or new (else a new one)')
      .option('--assembly <name>', 'assembly of a new trial')
      .option('--press <name>', 'press of a new trial')
      .option('--layout <name>', 'read them by this saved layout')
      .option('--save-layout <name>', 'save how the file is read under this name')
      .option('--again', 'bring a file in once more where it is to be read otherwise than before')
      .option('--target <temperature>', 'logger file: bond-line target, such as 350F or 177C')
      .option('--hold <duration>', 'logger file: hold at or above target, such as 120s or 2min')
      .option(
        '--closed-at <time>',
        'logger file: press closed, counted from the first reading, such as 12.5s',
      )
      .option(
        '--platens <temperature>',
        'logger file: platen set point; two values, upper then lower, parted by a slash',
      )
      .option('--ambient <temperature>', 'logger file: room temperature, such as 75F')
      .option(
        '--roles <list>',
        'logger file: what each channel is laid on, channel 1 first, parted by commas',
      )
      .option(
        '--probes <names>',
        'logger file: probe on each channel, channel 1 first, parted by commas; - for none',
      )
      .option('--highest-peak <temperature>', 'logger file: highest bond-line temperature allowed')
      .addOption(
        new Option('--dip <rule>', 'logger file: what a dip below target does to the hold').choices([
          'restarts',
          'pauses',
        ]),
      ),
  )
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/import.ts')).importCommand));

  program
    .command('layouts')
    .description('list the saved layouts of loggers’ files')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/layouts.ts')).layouts));

  program
    .command('export')
    .description(
      'write runs, trials, recipes, bonding cycles, probes, presses or assemblies as CSV or JSON, or recordings as files (fields: what each column holds)',
    )
    .addArgument(
      new Argument('<what>', 'what to write').choices([
        'runs',
        'trials',
        'recipes',
        'cycles',
        'probes',
        'presses',
        'assemblies',
        'recordings',
        'fields',
      ]),
    )
    .option('--out <path>', 'file to write to, or folder (recordings: folder); else standard output')
    .addOption(new Option('--format <format>', 'form of the table').choices(['csv', 'json']).default('csv'))
    .option('--trial <id>', 'only what belongs to this trial')
    .addOption(storeOption())
    .action(lazily(async () => (await import('../commands/export.ts')).exportCommand));

  program
    .command('merge <store>')
    .description('bring another store into this one: nothing twice, nothing lost; the other is only read')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/merge.ts')).merge));

  program
    .command('backup <file>')
    .description('copy the store, also while it is in use; the copy is checked before it gets its name')
    .option('--replace', 'put it in the place of a file that is there')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/backup.ts')).backup));

  program
    .command('verify')
    .description('check the store: database, every recording against its hash, results, recipes, cycles')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/verify.ts')).verify));
}
