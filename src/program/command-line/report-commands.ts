import { type Command, Option } from 'commander';
import { addDoubtOptions } from './numbers-commands.ts';
import { addLoggerColumns, lazily, repeated, separated, showOption, storeOption } from './shared-options.ts';
import { addSideOptions } from './side-options.ts';

/** Options that say which trial, and how files are read and judged: as for `replay`. */
function addTrialOptions(command: Command): Command {
  return addLoggerColumns(addDoubtOptions(command))
    .option('--trial <id>', 'a trial from the store instead of files')
    .option('--assembly <name>', 'assembly of the files, where they do not say')
    .option('--press <name>', 'press of the files, where they do not say')
    .option('--target <temperature>', 'bond-line target, such as 350F or 177C (files)')
    .option('--hold <duration>', 'hold at or above target, such as 120s or 2min (files)')
    .addOption(
      new Option('--rule <rule>', 'dwell rule').choices(['mean', 'slowest', 'next-run', 'tolerance']),
    )
    .option('--content <share>', 'tolerance rule: share of all cycles that hold fully, such as 99%')
    .option('--confidence <share>', 'tolerance rule: how sure, such as 95%')
    .option('--margin <duration>', 'margin added to the dwell', '0s')
    .option('--timer-step <duration>', 'step of the press timer')
    .option('--closed-at <time>', 'press closed, counted from the first reading, such as 12.5s (files)')
    .option(
      '--platens <temperature>',
      'platen set point; two values, upper then lower, parted by a slash (files)',
    )
    .option('--ambient <temperature>', 'room temperature, such as 75F (files)')
    .option('--probes <list>', 'probe on each channel, channel 1 first, parted by commas, - for none (files)')
    .option('--roles <list>', 'what each channel is laid on, channel 1 first, parted by commas')
    .addOption(showOption())
    .addOption(storeOption());
}

/** Options that choose targets, cycles of a lot, or places of a survey. */
function addChoiceOptions(command: Command): Command {
  return command
    .option('--targets <list>', 're-check: dwell at these targets too, such as 330F,340F,350F', separated)
    .option('--cycles <numbers>', 'lot: only these, as bond --cycles numbers them, such as 1-40,42')
    .option('--from <day>', 'lot: closed on this day or later, such as 2026-03-02')
    .option('--to <day>', 'lot: closed on this day or before')
    .option('--recipe-version <number>', 'lot: only cycles of this version of the recipe')
    .option(
      '--positions <places>',
      'survey: where the probes lie: a CSV file (channel, x_mm, y_mm), or x/y of channel 1, 2, … such as "30/30mm, 270/30mm"',
    )
    .option('--limit <difference>', 'survey: largest spread allowed (10F unless stated)')
    .option('--over <duration>', 'survey: time at the end that is averaged (5min unless stated)')
    .option('--at <time>', 'survey: end of that time, counted from the first reading');
}

/** Commands that hand a trial over: a report, a chart. */
export function addReportCommands(program: Command): void {
  addChoiceOptions(addSideOptions(addTrialOptions(program.command('report [files...]'))))
    .description(
      'write a trial, a re-check, two presses compared, a platen survey or a bonded lot as a report: a page (.html) or a PDF (.pdf)',
    )
    .requiredOption('--out <file>', 'file to write; its ending says which: .html or .pdf')
    .addOption(new Option('--paper <size>', 'paper of the PDF').choices(['letter', 'a4']).default('letter'))
    .option('--gauge <pressure>', 'gauge pressure that was set, such as 43psi')
    .option(
      '--equipment <text>',
      'probe, reader or gauge with its calibration date (may be repeated)',
      repeated,
    )
    .option(
      '--recheck [version]',
      'hold the runs against the recipe in the store (the latest version unless stated); without files and --trial: all its runs there',
    )
    .option('--against <trial>', 'set a stored trial of the same assembly on another press beside it')
    .option('--slower <duration>', 'with --against: the other press may be this much slower')
    .option('--faster <duration>', 'with --against: the other press may be this much faster')
    .option(
      '--lot <name>',
      'report a bonded lot of this name instead: logged cycles of one assembly on one press',
    )
    .option('--survey', 'report a platen survey instead: the files are its recordings')
    .option('--note <text>', 'note printed with the job')
    .action(lazily(async () => (await import('../commands/report.ts')).report));

  addChoiceOptions(addSideOptions(addTrialOptions(program.command('chart [files...]'))))
    .description(
      'write a chart of a trial, a run, a warm-up, a survey, a re-check or a bonded lot as a picture (.svg or .png)',
    )
    .requiredOption('--out <file>', 'file to write; its ending says which: .svg or .png')
    .addOption(
      new Option('--view <view>', 'which chart (one run: run; several: overlay)').choices([
        'overlay',
        'crossing',
        'run',
        'soak-times',
        'dwell',
        'warm-up',
        'survey',
        'recheck',
        'what-if',
        'lot',
        'difference',
        'closed',
        'presses',
      ]),
    )
    .option('--against <trial>', 'view presses: a stored trial of the same assembly on another press')
    .option('--run <number>', 'which run, for the view of one run')
    .option('--width <pixels>', 'width of a PNG', '1440')
    .action(lazily(async () => (await import('../commands/chart.ts')).chart));
}
