import { type Command, Option } from 'commander';
import { addCureOptions, addDoubtOptions } from './numbers-commands.ts';
import { jsonOption, lazily, showOption, storeOption } from './shared-options.ts';

const RULES = ['mean', 'slowest', 'next-run', 'tolerance'] as const;

/** Commands used at a desk: the store, ram pressure. */
export function addDeskCommands(program: Command): void {
  program
    .command('pressure')
    .description(
      'ram pressure: gauge for a wanted net facing pressure, or net facing pressure from the gauge',
    )
    .option('--ring-od <length>', 'ring outer diameter, such as 212mm or 9.875in')
    .option('--ring-id <length>', 'ring inner diameter')
    .option('--bore <length>', 'ram bore')
    .option('--rod <length>', 'rod diameter, when the ram pulls')
    .option('--rams <count>', 'number of rams', '1')
    .option('--gauge <pressure>', 'gauge pressure, such as 120psi or 8.3bar')
    .option('--net <pressure>', 'wanted net facing pressure')
    .option('--division <pressure>', 'one division of the gauge')
    .option(
      '--band <pressures>',
      'wanted net facing pressure from/to (default: that of the assembly, else 200psi/250psi)',
    )
    .option(
      '--land <fraction>',
      'share of the ring that carries load (grooved or segmented rings), such as 0.85',
    )
    .option('--efficiency <fraction>', 'share of the ram force that reaches the ring, such as 0.95')
    .option('--assembly <name>', 'take the ring from this assembly in the store')
    .option('--press <name>', 'take the ram from this press in the store')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/pressure.ts')).pressure));

  addDoubtOptions(program.command('trials [id]'))
    .description('list the trials in the store, or show one with its runs and dwell')
    .addOption(new Option('--rule <rule>', 'dwell rule').choices([...RULES]))
    .option('--margin <duration>', 'margin added to the dwell', '0s')
    .option('--content <share>', 'tolerance rule: share of all cycles that hold fully, such as 99%')
    .option('--confidence <share>', 'tolerance rule: how sure, such as 95%')
    .option('--explain', 'show the whole uncertainty budget')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/trials.ts')).trials));

  for (const [name, does] of [
    ['set-aside', 'leave a run out of its trial, with a reason'],
    ['take-in', 'count a suspect run, or a run set aside, with a reason'],
  ] as const) {
    program
      .command(`${name} <trial> <run>`)
      .description(does)
      .requiredOption('--reason <text>', 'why; kept with the run')
      .addOption(storeOption())
      .addOption(jsonOption())
      .action(lazily(async () => (await import('../commands/decide.ts')).decide(name)));
  }

  program
    .command('accept <trial>')
    .description('accept a trial’s dwell as a recipe (a new version; none is ever changed)')
    .requiredOption('--initials <letters>', 'who accepts')
    .addOption(
      new Option('--rule <rule>', 'dwell rule (the stricter one unless you say)').choices([
        'mean',
        'slowest',
        'next-run',
      ]),
    )
    .option('--reason <text>', 'why a less strict rule is chosen')
    .option('--margin <duration>', 'margin added to the dwell', '0s')
    .option('--content <share>', 'tolerance rule: share of all cycles that hold fully, such as 99%')
    .option('--confidence <share>', 'tolerance rule: how sure, such as 95%')
    .option('--gauge <pressure>', 'ram gauge pressure that the recipe is made with')
    .option('--note <text>', 'note kept with the recipe', '')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/accept.ts')).accept));

  program
    .command('recipes')
    .description('list the recipes in the store, and which are to be re-proved')
    .option('--re-prove-after <days>', 'days after which the shop proves a recipe anew, or never; remembered')
    .option(
      '--withdraw <version>',
      'take a version out of use, with initials and a reason; it stays on record',
    )
    .option('--assembly <name>', 'withdraw: assembly of the recipe')
    .option('--press <name>', 'withdraw: press of the recipe')
    .option('--initials <letters>', 'withdraw: who withdraws')
    .option('--reason <text>', 'withdraw: why')
    .addOption(showOption())
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/recipes.ts')).recipes));

  program
    .command('presses [name]')
    .description('list the presses, or add or change one')
    .option('--bore <length>', 'ram bore')
    .option('--rod <length>', 'rod diameter, when the ram pulls')
    .option('--rams <count>', 'number of rams')
    .option('--division <pressure>', 'one division of the gauge')
    .option('--platens <temperature>', 'platen set point; two values, upper then lower, parted by a slash')
    .addOption(
      new Option('--timer-starts <when>', 'what starts the press’s own timer').choices(['button', 'closing']),
    )
    .option('--timer-offset <duration>', 'from that start to press closed')
    .option('--timer-step <duration>', 'step of the press’s timer')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/presses.ts')).presses));

  addCureOptions(program.command('assemblies [name]'))
    .description('list the assemblies, or add or change one')
    .option('--ring-od <length>', 'ring outer diameter')
    .option('--ring-id <length>', 'ring inner diameter')
    .option('--carrier <text>', 'carrier')
    .option('--target <temperature>', 'bond-line target')
    .option('--hold <duration>', 'hold at or above target')
    .option('--net <pressures>', 'net facing pressure from/to, such as 200psi/250psi')
    .option('--adhesive <text>', 'adhesive')
    .option('--data-sheet <revision>', 'revision of the adhesive’s data sheet')
    .option('--highest-dwell <duration>', 'longest dwell allowed')
    .option('--highest-peak <temperature>', 'highest bond-line temperature allowed')
    .option('--recovery <duration>', 'least recovery time between closings')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/assemblies.ts')).assemblies));

  program
    .command('recordings [id]')
    .description('list the recordings in the store, or write one out as a text file')
    .option('--out <file>', 'file to write the recording to')
    .addOption(storeOption())
    .addOption(jsonOption())
    .action(lazily(async () => (await import('../commands/recordings.ts')).recordings));

  program
    .command('simulate [scenario]')
    .description('write simulated recordings (without a name: list the scenarios)')
    .option('--out <file>', 'file to write to')
    .option('--all <folder>', 'write every shipped scenario into this folder')
    .option('--seed <number>', 'another seed')
    .action(lazily(async () => (await import('../commands/simulate.ts')).simulate));
}
