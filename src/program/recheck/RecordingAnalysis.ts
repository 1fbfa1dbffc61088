import type { Probe } from '../../core/probe/Probe.ts';
import type { MadeOn } from '../../core/recheck/recheck-run.ts';
import type { RunResult } from '../../core/run/RunResult.ts';
import type { RuleOptions } from '../options/run-rules.ts';
import type { SourceOptions } from '../sources/Source.ts';

/** Where recordings are read from. */
export type RecordingPlace =
  | { readonly kind: 'store'; readonly path: string }
  | { readonly kind: 'files'; readonly options: SourceOptions };

/** What recordings are analysed by: the rules asked for, and the same again at each of these targets, °C. */
export interface AskedRules {
  readonly options: RuleOptions;
  readonly targetsC: readonly number[];
}

/** A recording's runs by the rules asked for. Only plain values: it passes between threads. */
export interface RecordingAnalysis {
  /** The recording's id in the store, or its file. */
  readonly name: string;
  /** The same for the same recording, however it was named. */
  readonly identity: string;
  /** What the recording's head names. */
  readonly madeOn: MadeOn;
  readonly results: readonly RunResult[];
  /** Probes whose channel gave the crossings, with their records of that day. */
  readonly probes: readonly Probe[];
  /** One list per target asked for. */
  readonly atTargets: readonly (readonly RunResult[])[];
  /** The decoded trace as bytes, to be kept beside the recording; null where it is kept already or not to be. */
  readonly traceToKeep: Uint8Array | null;
}
