import type { LoggerFileOptions } from '../logger-file/LoggerLayout.ts';

/** A file that became a recording. */
export interface ImportedFile {
  readonly fileSha256: string;
  readonly fileName: string;
  /** How it was read, as text: layout, target, hold and the rest. Empty for our own recordings. */
  readonly readAs: string;
  readonly importedAt: string;
}

/** A recording as text, in the parts that the store keeps. */
export type RecordingPart =
  | { readonly kind: 'head'; readonly text: string }
  | { readonly kind: 'entries'; readonly text: string; readonly entries: number }
  | { readonly kind: 'closing'; readonly text: string };

/** How a logger's file is read, kept under a name. */
export interface SavedLayout {
  readonly name: string;
  readonly options: LoggerFileOptions;
  readonly savedAt: string;
}

/** What bringing files in needs of a store, beyond `Store`. */
export interface StoreExchange {
  /** All that `work` does to the store is done, or nothing of it. */
  atomically<Result>(work: () => Result): Result;
  /**
   * Recordings that came from a file of these bytes, or one that says the same (`contentSha256`); empty texts where only the
   * recording's head says so.
   */
  importsOf(sha256: string): readonly (ImportedFile & {
    readonly recordingId: string;
    readonly trialId: string | null;
  })[];
  /** Adds a whole recording, byte for byte as its parts say. Throws where its id is taken. */
  addRecording(recording: {
    readonly recordingId: string;
    readonly trialId: string | null;
    readonly simulated: boolean;
    readonly parts: Iterable<RecordingPart>;
    readonly file: ImportedFile;
  }): void;
  layouts(): readonly SavedLayout[];
  /** Saving a name again replaces what it meant. */
  saveLayout(layout: SavedLayout): void;
}
