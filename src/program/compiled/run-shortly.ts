import { setFlagsFromString } from 'node:v8';

/**
 * For commands that end within a few tenths of a second: the engine is to wait longer (its budget is about 130 kB of
 * bytecode otherwise) before it compiles a function anew with all optimisations, which costs such a command more
 * than it gains. Long work still gets there. Call before the command's own modules are loaded.
 */
export function runShortly(): void {
  setFlagsFromString('--interrupt-budget=600000');
}
