import { type Command, Option } from 'commander';
import { addLoggerColumns, jsonOption, lazily, repeated, showOption, storeOption } from './shared-options.ts';

/** What the adhesive's data sheet says of its cure: the three belong together. */
export function addCureOptions(command: Command): Command {
  return command
    .option('--activation-energy <energy>', 'of the adhesive’s cure, from its data sheet, such as 80kJ/mol')
    .option('--cure-reference <temperature>', 'temperature that equivalent time is stated at')
    .option('--cure-range <temperatures>', 'what the data sheet holds for, from/to, such as 120C/200C');
}

/** What replay and trials may be told beside the recordings, for figures that stand up to an auditor. */
export function addDoubtOptions(command: Command): Command {
  return command
    .option(
      '--part <code:limit>',
      'doubt common to all runs, such as cold-junction:1C, tip-placement:0.5C, probe-lag:0.4s, platen-offset:3C (may be repeated)',
      repeated,
    )
    .option(
      '--reference-start <temperature>',
      'start that runs are compared at (median of the good runs unless stated)',
    )
    .option('--reference-platens <temperature>', 'platens that runs are compared at, mean of both');
}

/** Commands about figures: probes and their calibration, and estimates for other conditions. */
export function addNumbersCommands(program: Command): void {
  program
    .command('probes [name]')
    .description('list the probes, or add or change one: type, tolerance class, calibration')
    .addOption(
      new Option('--type <letter>', 'thermocouple type').choices(['K', 'J', 'T', 'E', 'N', 'R', 'S', 'B']),
    )
    .option('--class <class>', 'tolerance class: "IEC 1", "IEC 2", "IEC 3", "ASTM standard", "ASTM special"')
    .option(
      '--point <point>',
      'calibration point: temperature:error:expanded uncertainty (k = 2)[:date], such as 177C:-0.6C:0.5C:2026-03-01; ice or boiling for the temperature (may be repeated; replaces the points before)',
      repeated,
    )
    .option('--no-points', 'forget the calibration (kept in the history)')
    .option(
      '--uncertainty <kind>',
      'what the uncertainties of the points are: expanded (k = 2) or standard',
      'expanded',
    )
    .option('--air-pressure <pressure>', 'at the place, for boiling water, such as 985mbar')
    .option('--calibrated <date>', 'day of the calibration, for points without one')
    .addOption(
      new Option('--reader <how>', 'whether the reader was calibrated with the probe').choices([
        'included',
        'not-included',
      ]),
    )
    .option('--head <temperature>', 'connection head during the calibration')
    .option('--reader-at <temperature>', 'reader during the calibration')
    .option('--target <temperature>', 'where to say what the probe leaves open', '350F')
    .option('--history', 'show every version of the probe')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/probes.ts')).probes));

  addLoggerColumns(program.command('what-if [files...]'))
    .description('estimate the soak time for another target, other platens or another start; never a recipe')
    .option('--trial <id>', 'a trial from the store instead of files')
    .option('--target <temperature>', 'other target')
    .option('--platens <temperature>', 'other platens (mean of both at closing)')
    .option('--start <temperature>', 'other start temperature of the carrier')
    .option('--run-target <temperature>', 'target of the runs as made, where the files state none (350F)')
    .option('--hold <duration>', 'hold, where the files state none')
    .option('--closed-at <time>', 'press closed, counted from the first reading, for files without a mark')
    .option('--set-points <temperature>', 'platen set point of the runs as made; upper/lower')
    .option('--roles <list>', 'what each channel is laid on, channel 1 first, parted by commas')
    .option('--probes <names>', 'probe on each channel, channel 1 first, parted by commas')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/what-if.ts')).whatIfCommand));
}
