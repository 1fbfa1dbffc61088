import type { CoolingWait } from '../cooling/CoolingWait.ts';
import type { PressureResult } from '../press/PressureResult.ts';
import type { ReadingValue } from '../reading/StreamEvent.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { RunRules } from '../run/RunResult.ts';

/** What is checked before a run, in the order it is shown. */
export const READY_ITEMS = [
  'reader',
  'probes',
  'agreement',
  'noise',
  'platens',
  'carrier',
  'gauge',
  'placement',
  'bell',
] as const;

export type ReadyItemName = (typeof READY_ITEMS)[number];

/**
 * How an item stands. ready: found in order, or confirmed. wait: not enough seen yet. ask: a person must look and
 * confirm. not-ready: something is to be done. not-checked: cannot be measured here; it holds nothing up.
 */
export type ReadyState = 'ready' | 'wait' | 'ask' | 'not-ready' | 'not-checked';

export type ReadyCode =
  | 'reader-speaks'
  | 'reader-silent'
  | 'reader-lost'
  | 'reader-refused'
  | 'probes-sound'
  | 'probes-awaited'
  | 'probe-fault'
  | 'probe-missing'
  | 'probe-implausible'
  | 'probes-agree'
  | 'probes-apart'
  | 'probes-moving'
  | 'one-probe'
  | 'noise-low'
  | 'noise-high'
  | 'noise-awaited'
  | 'platens-steady'
  | 'platen-off'
  | 'platen-moving'
  | 'platens-awaited'
  | 'platens-not-measured'
  | 'carrier-cool'
  | 'carrier-warm'
  | 'carrier-awaited'
  | 'gauge'
  | 'gauge-unknown'
  | 'placement'
  | 'bell';

export interface ReadyItem {
  readonly name: ReadyItemName;
  readonly state: ReadyState;
  readonly code: ReadyCode;
  /** Figures for the sentence, unit in the key. */
  readonly facts: Readonly<Record<string, number | string>>;
  /** Why a person goes on although the item is not ready; null where nobody did. */
  readonly overridden: string | null;
}

/** What one check finds: the item without what a person decided about it. */
export type ReadyFinding = Omit<ReadyItem, 'name' | 'overridden'>;

/** One channel over the latest seconds before the press closes. */
export interface ChannelAtRest {
  /** Counted from 1. */
  readonly channel: number;
  readonly role: ChannelRole;
  readonly latest: ReadingValue | null;
  /** Mean of the stretch, °C; null without a temperature in it. */
  readonly meanC: number | null;
  /** Scatter about a straight line, °C (standard deviation). */
  readonly noiseC: number | null;
  readonly driftCPerS: number | null;
  /** Length of the stretch, s. */
  readonly overS: number;
}

export type ReaderNow =
  | { readonly kind: 'speaks'; readonly ratePerS: number | null }
  | { readonly kind: 'silent'; readonly ageS: number | null }
  | { readonly kind: 'lost'; readonly cause: string }
  | { readonly kind: 'refused'; readonly detail: string };

/** Everything the ready check looks at. */
export interface ReadyFacts {
  readonly reader: ReaderNow;
  /** Channels in use. */
  readonly channels: readonly ChannelAtRest[];
  readonly rules: Pick<RunRules, 'targetC' | 'platenSetPointC'>;
  /** Null before a bond-line reading. */
  readonly cooling: CoolingWait | null;
  /** Null where sizes of ram or ring are not known. */
  readonly gauge: PressureResult | null;
  readonly confirmed: readonly ReadyItemName[];
  readonly overridden: Readonly<Partial<Record<ReadyItemName, string>>>;
}
