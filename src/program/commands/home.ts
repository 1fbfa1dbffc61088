import type { Command } from 'commander';
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
  print('Try it without a reader:     dwellwright demo');
  print('See which readers are here:  dwellwright readers');
  print('Run a trial at the press:    dwellwright trial --port PORT --assembly WB-212 --press North');
  print('');
  print(program.helpInformation());
}
