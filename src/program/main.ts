#!/usr/bin/env node
import { CommanderError } from 'commander';
import { commandLine } from './command-line/command-line.ts';
import { endIfWindowClosed } from './live/hang-up.ts';
import { reportFailure } from './output/report-failure.ts';
import { surviveClosedPipes } from './output/survive-closed-pipes.ts';

surviveClosedPipes();

try {
  const program = commandLine(process.argv[2]);
  const [node = '', file = '', ...given] = process.argv;
  // Alone, or with the home's own options only, the program opens its home.
  const home = given.length === 0 || /^--(ascii|show|speed|store)\b/.test(given[0] ?? '');
  await program.parseAsync([node, file, ...(home ? ['home'] : []), ...given]);
} catch (error) {
  // Commander has already printed its message; help and version end well, wrong use ends with 2.
  process.exitCode = error instanceof CommanderError ? (error.exitCode === 0 ? 0 : 2) : reportFailure(error);
}
endIfWindowClosed();
