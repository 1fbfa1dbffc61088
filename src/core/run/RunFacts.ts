import type { GapCause, RunConditions } from '../reading/StreamEvent.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { ChannelFault } from '../wire/WireEvent.ts';
import type { OnsetEstimate } from './estimate-onset.ts';
import type { Jump } from './find-jumps.ts';
import type { FirstOrderFit } from './fit-first-order.ts';
import type { ChannelCrossing, Crossing, HoldResult, PressClosed, RunRules } from './RunResult.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

export interface Gap {
  readonly fromS: number;
  readonly toS: number;
  readonly cause: GapCause | 'fault';
}

/** What is known of one channel over one run, worked out once for all checks. */
export interface ChannelFacts {
  readonly channel: number;
  readonly role: ChannelRole;
  /** Level before press closed; null when there are no readings before it. */
  readonly restC: number | null;
  /** Sudden steps that stay. */
  readonly jumps: readonly Jump[];
  /** Slow noise: scatter about a moving mean of five seconds in the latter half, °C; null with too few readings. */
  readonly rippleC: number | null;
  readonly lowestC: number | null;
  readonly peakC: number | null;
  /** Scatter of readings about their neighbours, spikes left out, °C (standard deviation). */
  readonly noiseC: number;
  readonly resolutionC: number;
  /** Share of valid readings that stand far off their neighbours and come back. */
  readonly spikeShare: number;
  readonly spikes: number;
  readonly faults: readonly { readonly fault: ChannelFault; readonly fromS: number; readonly toS: number }[];
  readonly validReadings: number;
  /** Heating curve of first order from press closed to opened; null where it does not fit at all. */
  readonly fit: FirstOrderFit | null;
}

/** Everything a check may look at. Read-only; checks are pure functions of it. */
export interface RunFacts {
  readonly rules: RunRules;
  readonly trace: TraceBuffer;
  /** First and last reading that belong to the run. */
  readonly fromS: number;
  readonly endedS: number;
  readonly intervalS: number;
  readonly channels: readonly ChannelFacts[];
  readonly bondLine: readonly ChannelFacts[];
  readonly platens: readonly ChannelFacts[];
  readonly pressClosed: PressClosed | null;
  readonly onset: OnsetEstimate | null;
  readonly crossing: Crossing | null;
  readonly crossings: readonly ChannelCrossing[];
  readonly soakTimeS: number | null;
  readonly openedS: number | null;
  /** How `openedS` is known. */
  readonly openedBy: 'contact' | 'key' | 'fall' | null;
  /** How the run ended. */
  readonly endedBy: 'opened' | 'next-closing' | 'end-of-record';
  readonly startC: number | null;
  readonly peakC: number | null;
  readonly startedAbove: boolean;
  readonly hold: (HoldResult & { readonly lowestC: number | null }) | null;
  readonly gaps: readonly Gap[];
  readonly platenAtClosingC: { readonly upper: number | null; readonly lower: number | null };
  readonly conditions: RunConditions;
  readonly spoiltReason: string | null;
  /** The only mark of the closing was taken back while the run went on. */
  readonly closingTakenBack: boolean;
  readonly notes: readonly string[];
}
