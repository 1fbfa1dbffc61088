import { verifyStore } from '../../adapters/sqlite/verify-store.ts';
import { verificationLines } from '../../core/text/verification-text.ts';
import { storePath } from '../options/store-path.ts';
import type { StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

/** `verify`: checks the whole store; exit code 1 when something is not as it was written. */
export function verify(options: StoreOptions & { readonly json?: boolean }): void {
  const found = verifyStore(storePath(options));
  if (options.json) printJson(found);
  else print(verificationLines(found).join('\n'));
  if (found.problems.length > 0) process.exitCode = 1;
}
