import { Command } from 'commander';
import { addBondingCommands } from './bonding-commands.ts';
import { addDeskCommands } from './desk-commands.ts';
import { addExchangeCommands } from './exchange-commands.ts';
import { addNumbersCommands } from './numbers-commands.ts';
import { addPlatenCommands } from './platen-commands.ts';
import { addPressCommands } from './press-commands.ts';
import { addRecheckCommands } from './recheck-commands.ts';
import { addReplayCommand } from './replay-command.ts';
import { addReportCommands } from './report-commands.ts';
import { VERSION } from './version.ts';

/**
 * Every command and option. Each action loads its own module only when it is called, so that a command
 * that draws nothing loads neither the screen nor the serial port. `first` is the first word of the command line: a small
 * replay is to start at once and needs no other command.
 */
export function commandLine(first?: string): Command {
  const program = new Command('dwellwright')
    .description('Finds the soak time of a bond line and the dwell that follows from it.')
    .version(VERSION, '--version', 'print the version')
    .helpOption('--help', 'show help')
    .helpCommand('help [command]', 'show help for a command')
    .showHelpAfterError('(dwellwright --help lists the commands)')
    .showSuggestionAfterError()
    // What stands after a command belongs to it: `recheck --version 2` is no question for the program's own version.
    .enablePositionalOptions()
    .exitOverride();
  if (first === 'replay') addReplayCommand(program);
  else addAllCommands(program);
  for (const command of program.commands) {
    command.exitOverride().showHelpAfterError(`(dwellwright ${command.name()} --help lists the options)`);
  }
  program.addHelpText(
    'after',
    '\nThis tool advises. It is no safety device and no interlock, and it never commands a press.\nFollow the machine’s manual, the adhesive’s data sheet and local codes.',
  );
  return program;
}

function addAllCommands(program: Command): void {
  addPressCommands(program);
  addBondingCommands(program);
  addReplayCommand(program);
  addDeskCommands(program);
  addRecheckCommands(program);
  addPlatenCommands(program);
  addNumbersCommands(program);
  addReportCommands(program);
  addExchangeCommands(program);
}
