import type { CommandProblem } from './read-command.ts';
import { sealLine } from './seal-line.ts';

/** Writes that a command was carried out: `ok` and the command as understood, such as `rate 10`. */
export function formatReply(command: string): string {
  return sealLine(`ok ${command}`);
}

/** Writes that a command was not carried out, why, and its first word (`-` where none is known). */
export function formatErrorReply(problem: CommandProblem, word: string | null): string {
  return sealLine(`error ${problem} ${word ?? '-'}`);
}
