import type { Command } from 'commander';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import type { HomeOptions } from '../home/HomeOptions.ts';
import { canDraw } from '../output/can-draw.ts';
import { print } from '../output/print.ts';

/** `dwellwright` alone: the home on a terminal; without one, what one would do next in plain lines. */
export async function homeCommand(options: HomeOptions, command: Command): Promise<void> {
  if (canDraw()) {
    const { runHome } = await import('../home/run-home.ts');
    await runHome(options);
  } else plainHome(command.parent ?? command);
}

function plainHome(program: Command): void {
  for (const line of COMMAND_TEXT.home) print(line);
  print('');
  print(program.helpInformation());
}
