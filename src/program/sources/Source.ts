import type {
  ChannelRole,
  RecordingEntry,
  RecordingHead,
  RecordingSoundness,
} from '../../core/recording/RecordingEntry.ts';
import type { LineDecoder } from '../../core/wire/WireEvent.ts';

/** Something to replay: a recording file, another logger's file, or a recording in the store. */
export interface Source {
  /** As the user named it. */
  readonly name: string;
  /** The same for the same recording, however it was named: its id, else its file. */
  readonly identity: string;
  /** Null for another logger's file. */
  readonly head: RecordingHead | null;
  readonly decoder: LineDecoder;
  readonly roles: readonly ChannelRole[];
  /** Step in which the source writes its times, s; 0 where far below a sample. */
  readonly timeStepS: number;
  entries(): Iterable<RecordingEntry>;
  /** To be asked after the entries were read. */
  soundness(): RecordingSoundness;
}

/** How the user says a file is to be read; only what was given. */
export interface SourceOptions {
  readonly roles?: string;
  /** Whether one of the roles must be on the bond line; needed unless stated. */
  readonly bondLine?: 'needed' | 'optional';
  readonly unit?: 'C' | 'F' | 'K';
  readonly timeColumn?: string;
  readonly temperatureColumn?: readonly string[];
  readonly timeUnit?: 's' | 'ms' | 'us' | 'min' | 'h';
  readonly interval?: string;
  readonly rows?: string;
}
