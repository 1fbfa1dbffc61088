import { DwellwrightError } from '../../core/DwellwrightError.ts';
import { FAILURE_TEXT } from '../../core/text/command-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';

/**
 * Says on standard error what failed, what was expected, what came, what to do; no stack unless
 * DWELLWRIGHT_STACK is set. Returns the exit code.
 */
export function reportFailure(error: unknown): number {
  if (isForPeople(error)) {
    process.stderr.write(`dwellwright: ${neutralise(error.message)}\n`);
    if (error.remedy !== null) process.stderr.write(`${FAILURE_TEXT.todo(neutralise(error.remedy))}\n`);
    if (process.env.DWELLWRIGHT_STACK) process.stderr.write(`${error.stack}\n`);
    return error.exitCode;
  }
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(`${FAILURE_TEXT.unexpected(neutralise(message))}\n`);
  process.stderr.write(`${FAILURE_TEXT.todo(FAILURE_TEXT.unexpectedTodo)}\n`);
  if (process.env.DWELLWRIGHT_STACK && error instanceof Error) process.stderr.write(`${error.stack}\n`);
  return 2;
}

/** An error of this project by its shape: a command bundled apart brings its own copy of the class. */
function isForPeople(error: unknown): error is DwellwrightError {
  return (
    error instanceof DwellwrightError || (error instanceof Error && 'remedy' in error && 'exitCode' in error)
  );
}
