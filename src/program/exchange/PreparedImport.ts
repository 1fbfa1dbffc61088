import type { ImportedFile, RecordingPart } from '../../core/exchange/StoreExchange.ts';
import type { LoggerFileOptions } from '../../core/logger-file/LoggerLayout.ts';
import type { RecordingHead, RecordingSoundness } from '../../core/recording/RecordingEntry.ts';
import type { RunResult } from '../../core/run/RunResult.ts';

/** The trial that a file goes into. */
export interface ImportTrial {
  readonly trialId: string;
  readonly assemblyName: string;
  readonly pressName: string;
  readonly simulated: boolean;
  /** Not in the store yet. */
  readonly isNew: boolean;
}

/** A file that was read and found fit, not yet in the store. */
export interface PreparedImport {
  readonly path: string;
  /** Null for a warm-up or a survey of a platen: no probe lies on a bond line, so it is no run. */
  readonly trial: ImportTrial | null;
  readonly head: RecordingHead;
  readonly file: ImportedFile;
  /** See `contentSha256`; null for our own recordings. */
  readonly contentSha256: string | null;
  /** Reads the file again, so that no file is held in memory. */
  parts(): Iterable<RecordingPart>;
  readonly results: readonly RunResult[];
  /** What the lines were found to be. */
  readonly recognised: string | null;
  readonly soundness: RecordingSoundness;
  /** What `--save-layout` keeps; null for our own recordings. */
  readonly layoutOptions: LoggerFileOptions | null;
}
