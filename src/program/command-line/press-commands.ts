import { type Command, Option } from 'commander';
import { jsonOption, lazily, showOption, storeOption } from './shared-options.ts';

/** Options that say what a run is measured against. */
function addRuleOptions(command: Command): Command {
  return command
    .option('--target <temperature>', 'bond-line target, such as 350F or 177C')
    .option('--hold <duration>', 'hold at or above target, such as 120s or 2min')
    .option('--platens <temperature>', 'platen set point; two values, upper then lower, parted by a slash')
    .option('--ambient <temperature>', 'room temperature, such as 75F (25 °C unless stated or measured)')
    .option('--roles <list>', 'what each channel is laid on, channel 1 first, parted by commas')
    .addOption(
      new Option('--dip <rule>', 'what a dip below target does to the hold').choices(['restarts', 'pauses']),
    );
}

/** Commands used at the press: a reader is plugged in, or simulated. */
export function addPressCommands(program: Command): void {
  addRuleOptions(program.command('trial'))
    .description('run a heat-soak trial with a reader at the press')
    .option('--port <path>', 'port of the reader (see: dwellwright readers)')
    .option('--simulated', 'use the simulated reader instead of a port')
    .option('--speed <factor>', 'simulated reader: times real time', '1')
    .option('--assembly <name>', 'assembly, such as WB-212')
    .option('--press <name>', 'press, such as North')
    .option('--new', 'add an assembly or press that the store does not know')
    .option('--go-on <trial>', 'go on with a trial of the store: further runs in it')
    .option('--runs <count>', 'runs planned')
    .option('--baud <rate>', 'speed of the serial line', '115200')
    .option('--rate <hz>', 'samples per second to ask the reader for')
    .addOption(new Option('--unit <unit>', 'unit of a reader that prints none').choices(['F', 'C', 'K']))
    .option('--ring <state>', 'ring fresh or re-used')
    .option('--coating <state>', 'ring coated or bare')
    .option('--carrier <id>', 'carrier id')
    .option('--probe <state>', 'probe re-laid or left')
    .option(
      '--probes <names>',
      'probe on each channel by name, channel 1 first, parted by commas; remembered',
    )
    .option('--initials <letters>', 'initials of the operator')
    .option('--seconds <duration>', 'stop by itself after this time, such as 90s (for scripts)')
    .option('--plain', 'print plain lines instead of the screen')
    .option('--ascii', 'draw with ASCII characters only')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/trial.ts')).trial));

  program
    .command('home')
    .description('the home: what one would do next (the same as dwellwright alone)')
    .option('--ascii', 'draw with ASCII characters only')
    .option('--speed <factor>', 'simulated reader: times real time')
    .addOption(new Option('--show <unit>', 'show temperatures in °F or °C').choices(['F', 'C']))
    .addOption(storeOption())
    .action(lazily(async () => (await import('../commands/home.ts')).homeCommand));

  program
    .command('demo')
    .description('the whole job on a simulated reader, in a store of its own: five runs, dwell, saved recipe')
    .option('--speed <factor>', 'times real time')
    .option('--runs <count>', 'runs to make', '5')
    .option('--plain', 'print plain lines instead of the screen')
    .option('--ascii', 'draw with ASCII characters only')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/demo.ts')).demo));

  program
    .command('readers')
    .description('list the ports where a reader may be plugged in')
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/readers.ts')).readers));

  program
    .command('sniff <port>')
    .description('listen to a reader: what it speaks, channels, rate, noise, faults, lost lines, clock drift')
    .option('--seconds <duration>', 'how long to listen', '10s')
    .option('--baud <rate>', 'speed of the serial line', '115200')
    .addOption(new Option('--unit <unit>', 'unit of a reader that prints none').choices(['F', 'C', 'K']))
    .addOption(showOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/sniff.ts')).sniff));
}
