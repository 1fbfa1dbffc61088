import { type Command, Option } from 'commander';
import { addDoubtOptions } from './numbers-commands.ts';
import {
  addLoggerColumns,
  jsonOption,
  lazily,
  separated,
  showOption,
  storeOption,
} from './shared-options.ts';

/** Whether a recipe still holds, and how soak times went over months. */
export function addRecheckCommands(program: Command): void {
  const recheck = addDoubtOptions(program.command('recheck [files...]'))
    .description('analyse stored runs (or recordings) again and hold them against a recipe')
    .option('--assembly <name>', 'assembly of the recipe')
    .option('--press <name>', 'press of the recipe')
    .option('--version <number>', 'version of the recipe (the latest unless stated)')
    .option('--trial <id>', 'only the runs of this trial')
    .option('--targets <list>', 'what if: dwell at these targets too, such as 330F,340F,350F', separated)
    .option('--target <temperature>', 'what if: another target than the recipe’s')
    .option('--hold <duration>', 'what if: another hold than the recipe’s')
    .addOption(
      new Option('--rule <rule>', 'dwell rule of the suggestion').choices([
        'mean',
        'slowest',
        'next-run',
        'tolerance',
      ]),
    )
    .option('--margin <duration>', 'margin added to the dwell', '0s')
    .option('--content <share>', 'tolerance rule: share of all cycles that hold fully, such as 99%')
    .option('--confidence <share>', 'tolerance rule: how sure, such as 95%')
    .option('--roles <list>', 'files: what each channel is laid on, channel 1 first, parted by commas')
    .option('--platens <temperature>', 'platen set point; two values, upper then lower, parted by a slash')
    .option('--closed-at <time>', 'files: press closed, counted from the first reading, such as 12.5s');
  addLoggerColumns(recheck)
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(
      lazily(async () => {
        (await import('../compiled/run-shortly.ts')).runShortly();
        return (await import('../commands/recheck.ts')).recheck;
      }),
    );

  program
    .command('history')
    .description('soak time over months: one point a trial, with limits and signals')
    .requiredOption('--assembly <name>', 'assembly')
    .requiredOption('--press <name>', 'press')
    .option('--base <count>', 'limits from the first so many trials (from all unless stated)')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/history.ts')).history));
}
