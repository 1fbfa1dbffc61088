#!/usr/bin/env node
import { CommanderError } from 'commander';
import { commandLine } from './command-line/command-line.ts';
import { reportFailure } from './output/report-failure.ts';
import { surviveClosedPipes } from './output/survive-closed-pipes.ts';

surviveClosedPipes();

try {
  const program = commandLine();
  if (process.argv.length > 2) await program.parseAsync(process.argv);
  else await (await import('./commands/home.ts')).home(program);
} catch (error) {
  // Commander has already printed its message; help and version end well, wrong use ends with 2.
  process.exitCode = error instanceof CommanderError ? (error.exitCode === 0 ? 0 : 2) : reportFailure(error);
}
