import type { LoggerFileOptions } from '../../core/logger-file/LoggerLayout.ts';
import type { Store } from '../../core/store/Store.ts';
import type { Ask } from './ask.ts';
import type { ImportOptions } from './ImportOptions.ts';
import type { TrialChooser } from './trial-chooser.ts';

/** What every file of one import shares. */
export interface ImportContext {
  readonly store: Store;
  readonly options: ImportOptions;
  /** From `--layout`, options before it. */
  readonly loggerOptions: LoggerFileOptions;
  readonly ask: Ask | null;
  /** Asks when the press closed in each file; null where there are too many to be asked of each. */
  readonly askClosing: Ask | null;
  readonly trials: TrialChooser;
  readonly importedAt: string;
}
