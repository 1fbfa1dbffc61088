import { DwellwrightError } from '../../core/DwellwrightError.ts';
import { neutralise } from '../../core/text/neutralise.ts';

/**
 * Says on standard error what failed, what was expected, what came, what to do; no stack unless
 * DWELLWRIGHT_STACK is set. Returns the exit code.
 */
export function reportFailure(error: unknown): number {
  if (isForPeople(error)) {
    process.stderr.write(`dwellwright: ${neutralise(error.message)}\n`);
    if (error.remedy !== null) process.stderr.write(`  what to do: ${neutralise(error.remedy)}\n`);
    if (process.env.DWELLWRIGHT_STACK) process.stderr.write(`${error.stack}\n`);
    return error.exitCode;
  }
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(`dwellwright: something went wrong that we did not expect: ${neutralise(message)}\n`);
  process.stderr.write(
    '  what to do: nothing recorded is lost; run again with DWELLWRIGHT_STACK=1 and send us the text\n',
  );
  if (process.env.DWELLWRIGHT_STACK && error instanceof Error) process.stderr.write(`${error.stack}\n`);
  return 2;
}

/** An error of this project by its shape: a command bundled apart brings its own copy of the class. */
function isForPeople(error: unknown): error is DwellwrightError {
  return (
    error instanceof DwellwrightError || (error instanceof Error && 'remedy' in error && 'exitCode' in error)
  );
}
