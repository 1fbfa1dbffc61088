import { type Command, Option } from 'commander';
import { addLoggerColumns, jsonOption, lazily, showOption, storeOption } from './shared-options.ts';
import { addSideOptions, heatingOption } from './side-options.ts';

/** Options that say how another logger's file is to be read, and what each channel is laid on. */
function addFileOptions(command: Command): Command {
  return addLoggerColumns(command).option(
    '--roles <list>',
    'what each channel is laid on, channel 1 first, parted by commas',
  );
}

function addWarmUpOptions(command: Command): Command {
  return addFileOptions(command)
    .option('--platens <temperature>', 'platen set point; two values, upper then lower, parted by a slash')
    .option('--band <difference>', 'half-width of the band about the set point (5F unless stated)')
    .option('--for <duration>', 'READY when inside the band for so long (5min unless stated)')
    .option('--recovery-band <difference>', 'a dip deeper than this is a cold part (2F unless stated)');
}

/** Commands about the platens: their warm-up, a survey over one, two presses compared. */
export function addPlatenCommands(program: Command): void {
  addWarmUpOptions(program.command('warm-up [recordings...]'))
    .description(
      'work out how platens warmed up, from files or recordings of the store: rise, settling, overshoot, ripple, drift, recovery, READY',
    )
    .addOption(heatingOption())
    .option('--powered-at <time>', 'heaters switched on, counted from the first reading, such as 30s')
    .option('--explain', 'print what each figure means')
    .option('--live', 'record the platens from cold to READY; ends with 0 when READY was reached')
    .option('--port <path>', 'live: port of the reader (see: dwellwright readers)')
    .option('--simulated', 'live: use a simulated reader instead of a port')
    .option('--speed <factor>', 'live: simulated reader, times real time')
    .option('--press <name>', 'live: press, such as North')
    .option('--baud <rate>', 'live: speed of the serial line')
    .option('--rate <hz>', 'live: readings per second asked of the reader')
    .option('--probes <list>', 'live: probe on each channel, channel 1 first, parted by commas, - for none')
    .option('--seconds <duration>', 'live: stop by itself after this time (for scripts)')
    .option('--plain', 'live: print plain lines instead of the screen; ends by itself after READY')
    .option(
      '--after-ready <duration>',
      'live, plain: go on so long after READY, for level, ripple and drift (30s unless stated)',
    )
    .option('--ascii', 'live: draw with ASCII characters only')
    .addOption(storeOption())
    .addOption(showOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/warm-up.ts')).warmUp));

  addFileOptions(program.command('survey <recordings...>'))
    .description('uniformity of one platen from several probes: hottest, coldest, spread, a small map')
    .option(
      '--positions <places>',
      'where the probes lie: a CSV file (channel, x_mm, y_mm), or x/y of channel 1, 2, … such as "30/30mm, 270/30mm"',
    )
    .option('--limit <difference>', 'largest spread allowed, hottest less coldest', '10F')
    .option('--over <duration>', 'time at the end that is averaged', '5min')
    .option(
      '--at <time>',
      'end of that time, counted from the first reading (end of the recording unless stated)',
    )
    .option('--ascii', 'draw with ASCII characters only')
    .addOption(storeOption())
    .addOption(showOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/survey.ts')).survey));

  addSideOptions(addWarmUpOptions(program.command('compare')))
    .description('two presses, or one before and after: by their warm-ups, or by trials of one assembly')
    .option('--first-trial <id>', 'a trial of the first press from the store')
    .option('--second-trial <id>', 'a trial of the second press from the store')
    .addOption(
      new Option('--of <what>', 'what the files hold (found out unless stated)').choices([
        'warm-ups',
        'trials',
      ]),
    )
    .option('--slower <duration>', 'trials: the second press may be this much slower')
    .option('--faster <duration>', 'trials: the second press may be this much faster')
    .option('--probe-part <duration>', 'trials with different probes: what they may add to the difference')
    .option('--dwell <duration>', 'trials: dwell of the recipe proved on the first press')
    .option('--highest-peak <temperature>', 'trials: highest bond-line temperature allowed')
    .option('--target <temperature>', 'trials: bond-line target')
    .option('--hold <duration>', 'trials: hold at or above target')
    .option('--series', 'with --json: the traces aligned at power-on, for a chart')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/compare.ts')).compare));

  program
    .command('margins')
    .description(
      'state, before comparing, how much slower and faster the second press may be; says the chance of success',
    )
    .requiredOption('--assembly <name>', 'assembly')
    .requiredOption('--presses <list>', 'first and second press, parted by a comma')
    .requiredOption('--slower <duration>', 'the second press may be this much slower')
    .requiredOption('--faster <duration>', 'the second press may be this much faster')
    .option('--runs <count>', 'runs planned on each press', '5')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/margins.ts')).margins));
}
