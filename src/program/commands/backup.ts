import { backUpStore } from '../../adapters/sqlite/back-up-store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { verificationLines } from '../../core/text/verification-text.ts';
import { storePath } from '../options/store-path.ts';
import type { StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

interface BackupOptions extends StoreOptions {
  readonly replace?: boolean;
  readonly json?: boolean;
}

/** `backup FILE`: a copy of the store, also while it is in use; exit code 1 when the copy, or what was copied, is not whole. */
export function backup(file: string, options: BackupOptions): void {
  const report = backUpStore({ path: storePath(options), to: file, replace: options.replace === true });
  if (options.json) printJson(report);
  else
    print(
      [COMMAND_TEXT.backup(neutralise(file), report.bytes), ...verificationLines(report.verification)].join(
        '\n',
      ),
    );
  if (report.verification.problems.length > 0) process.exitCode = 1;
}
