import type { BondingCycle } from '../bonding/BondingCycle.ts';
import type { ClosingUnderWay } from '../bonding/ClosingUnderWay.ts';
import type { StoreExchange } from '../exchange/StoreExchange.ts';
import type { Assembly, Press } from '../press/Press.ts';
import type { Probe } from '../probe/Probe.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { Withdrawal } from '../recipe/Withdrawal.ts';
import type { RecordingEntry, RecordingHead, RecordingSoundness } from '../recording/RecordingEntry.ts';
import type { RunResult } from '../run/RunResult.ts';
import type { TrialRun } from '../trial/TrialResult.ts';

/** Where an open recording is written. Entries are on disk within 200 ms (group commit). */
export interface RecordingWriter {
  readonly recordingId: string;
  append(entry: RecordingEntry): void;
  /** Puts everything appended so far on disk before it returns. */
  flush(): void;
  /** Writes the closing count and hash; nothing can be appended after. */
  close(): void;
  /** Time from append to on disk, ms, over the latest commits. */
  commitDelay(): { readonly commits: number; readonly p99Ms: number; readonly worstMs: number };
}

export interface StoredRecording {
  readonly head: RecordingHead;
  /** Entries as far as they are whole, in order. */
  entries(): Iterable<RecordingEntry>;
  readonly soundness: RecordingSoundness;
}

export interface StoredTrial {
  readonly trialId: string;
  readonly assemblyName: string;
  readonly pressName: string;
  readonly startedAt: string;
  readonly closedAt: string | null;
  readonly simulated: boolean;
  readonly recordingIds: readonly string[];
}

/** What the program needs of a store. The sqlite adapter implements it, on a file or `:memory:`. */
export interface Store {
  readonly path: string;
  /** Read back from the database, shown on request: journal mode and synchronous. */
  readonly durability: { readonly journalMode: string; readonly synchronous: string };

  savePress(press: Press): void;
  presses(): readonly Press[];
  saveAssembly(assembly: Assembly): void;
  assemblies(): readonly Assembly[];

  /** Adds a version of the probe; earlier ones stay. */
  saveProbe(probe: Probe, savedAt: string): void;
  /** The latest version of each probe, by name. */
  probes(): readonly Probe[];
  /** Every version of one probe, the latest first. */
  probeHistory(name: string): readonly { readonly savedAt: string; readonly probe: Probe }[];

  startTrial(trial: {
    readonly trialId: string;
    readonly assemblyName: string;
    readonly pressName: string;
    readonly startedAt: string;
    readonly simulated: boolean;
  }): void;
  closeTrial(trialId: string, closedAt: string): void;
  trials(): readonly StoredTrial[];

  startRecording(head: RecordingHead): RecordingWriter;
  /** Undefined when there is none with this id. */
  recording(recordingId: string): StoredRecording | undefined;
  recordingIds(): readonly string[];
  /** The recording's text in pieces, byte for byte what its file holds (also when not closed); undefined when there is none. */
  recordingText(recordingId: string): Iterable<string> | undefined;

  /** A closed recording's decoded trace, if one was kept by this version of the decoder. */
  keptTrace(recordingId: string, decodeVersion: number): Uint8Array | undefined;
  /** Keeps decoded traces beside their recordings, all at once; nothing happens where a recording is not there or not closed. */
  keepTraces(
    traces: readonly { readonly recordingId: string; readonly trace: Uint8Array }[],
    decodeVersion: number,
  ): void;

  /** Derived values: replaced freely, each stamped with its rule version. */
  saveRunResult(recordingId: string, result: RunResult): void;
  /** Runs of a trial with the latest decision on each, in the order they were made. */
  trialRuns(trialId: string): readonly (TrialRun & { readonly recordingId: string })[];
  /** Appends; nothing is ever deleted. */
  decideRun(decision: {
    readonly recordingId: string;
    readonly runNumber: number;
    readonly kind: 'set-aside' | 'taken-in' | 'automatic';
    readonly reason: string;
    readonly decidedAt: string;
  }): void;

  /** Gives the recipe the next version for its assembly and press, and returns it. */
  saveRecipe(recipe: Omit<Recipe, 'version' | 'withdrawn'>): Recipe;
  /** Every version, with its withdrawal where it was withdrawn. */
  recipes(): readonly Recipe[];
  /** Takes a recipe version out of use; appends, nothing is ever deleted. Throws where there is no such version. */
  withdrawRecipe(
    withdrawal: Withdrawal & {
      readonly assemblyName: string;
      readonly pressName: string;
      readonly version: number;
    },
  ): void;

  /** Keeps, or renews, a closing that runs now; logging its cycle takes it out. */
  saveClosing(closing: ClosingUnderWay): void;
  /** Closings that are not logged yet, of this program and of others, in the order they began. */
  closings(): readonly ClosingUnderWay[];
  /** Takes out a closing whose mark was taken back. */
  dropClosing(cycleId: string): void;

  /** Logs a cycle of production; nothing is ever changed or deleted. */
  saveCycle(cycle: BondingCycle): void;
  /** Every logged cycle, in the order they were logged. */
  cycles(): readonly BondingCycle[];

  /** Settings remembered between starts (per press and assembly defaults and the like). */
  setting(key: string): string | undefined;
  saveSetting(key: string, value: string): void;

  /** Files brought in, and named layouts of loggers' files. */
  readonly exchange: StoreExchange;

  close(): void;
}
