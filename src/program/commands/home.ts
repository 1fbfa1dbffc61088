import type { Command } from 'commander';
import { print } from '../output/print.ts';

/** `dwellwright` alone: what one would do next. */
export async function home(program: Command): Promise<void> {
  print('Try it without a reader:     dwellwright demo');
  print('See which readers are here:  dwellwright readers');
  print('Run a trial at the press:    dwellwright trial --port PORT --assembly WB-212 --press North');
  print('');
  print(program.helpInformation());
}
