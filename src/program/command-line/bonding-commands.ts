import { type Command, Option } from 'commander';
import { jsonOption, lazily, showOption, storeOption } from './shared-options.ts';

/** Production with a recipe. */
export function addBondingCommands(program: Command): void {
  program
    .command('bond')
    .description('bond with a recipe: production timer, every cycle logged')
    .option('--assembly <name>', 'assembly, such as WB-212 (chosen on the screen unless stated)')
    .option('--press <name>', 'press, such as North')
    .option('--port <path>', 'port of the reader (see: dwellwright readers)')
    .option('--simulated', 'use the simulated reader instead of a port')
    .option('--no-reader', 'without a reader: the time alone')
    .option('--speed <factor>', 'simulated reader: times real time')
    .option('--roles <list>', 'what each channel is laid on, channel 1 first, parted by commas')
    .option(
      '--probes <list>',
      'probe on each channel by name, channel 1 first, - for none; remembered for the press',
    )
    .option('--baud <rate>', 'speed of the serial line')
    .option('--rate <hz>', 'samples per second to ask the reader for')
    .addOption(new Option('--unit <unit>', 'unit of a reader that prints none').choices(['F', 'C', 'K']))
    .option(
      '--platen-band <difference>',
      'platens out of band further than this from set point (5F unless stated)',
    )
    .option('--band <difference>', 'bond line: allowed beyond the recipe’s own runs (10F unless stated)')
    .option('--initials <letters>', 'initials of the operator')
    .option('--stop-after <cycles>', 'stop by itself after so many cycles')
    .option('--seconds <duration>', 'stop by itself after this time, such as 90s (for scripts)')
    .option('--cycles', 'list the logged cycles instead')
    .option('--plain', 'print plain lines instead of the screen; c, o, u, q as lines of input')
    .option('--ascii', 'draw with ASCII characters only')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/bond.ts')).bond));
}
