import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Command, Option } from 'commander';
import { addCureOptions, addDoubtOptions } from './numbers-commands.ts';
import { addLoggerColumns, jsonOption, lazily, showOption, storeOption } from './shared-options.ts';

const RULES = ['mean', 'slowest', 'next-run', 'tolerance'] as const;

/** Recordings and other loggers' files to runs, trial and dwell. */
export function addReplayCommand(program: Command): void {
  addLoggerColumns(
    addDoubtOptions(addCureOptions(program.command('replay [files...]')))
      .description(
        'work out runs, trial and dwell again from recordings or other loggers’ files (- reads standard input)',
      )
      .option('--trial <id>', 'replay a trial from the store instead of files')
      .option('--probes <names>', 'probe on each channel, channel 1 first, parted by commas; - for none')
      .option('--highest-peak <temperature>', 'highest bond-line temperature allowed')
      .option('--target <temperature>', 'bond-line target, such as 350F or 177C')
      .option('--hold <duration>', 'hold at or above target, such as 120s or 2min')
      .addOption(new Option('--rule <rule>', 'dwell rule').choices([...RULES]).default('mean'))
      .option('--margin <duration>', 'margin added to the dwell', '0s')
      .option('--content <share>', 'tolerance rule: share of all cycles that hold fully, such as 99%')
      .option('--confidence <share>', 'tolerance rule: how sure, such as 95%')
      .option('--timer-step <duration>', 'step of the press timer', '1s')
      .option('--closed-at <time>', 'press closed, counted from the first reading, such as 12.5s')
      .option('--platens <temperature>', 'platen set point; two values, upper then lower, parted by a slash')
      .option('--ambient <temperature>', 'room temperature, such as 75F (25 °C unless stated or measured)')
      .option('--roles <list>', 'what each channel is laid on, channel 1 first, parted by commas')
      .addOption(
        new Option('--dip <rule>', 'what a dip below target does to the hold').choices([
          'restarts',
          'pauses',
        ]),
      ),
  )
    .option('--together', 'average all, whatever assembly and press the recordings name')
    .option('--explain', 'show the whole uncertainty budget')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(
      lazily(async () => {
        const { loadCompiled } = await import('../compiled/compiled-module.ts');
        const compiled = loadCompiled(dirname(fileURLToPath(import.meta.url)), 'replay');
        return compiled?.exports.replay ?? (await import('../commands/replay.ts')).replay;
      }),
    );
}
