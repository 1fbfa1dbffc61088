import type { ReadyRule } from './ReadyRule.ts';

export interface WatchedPlaten {
  readonly label: string;
  readonly setPointC: number;
}

/** How one platen stands now. */
export interface PlatenReadiness {
  readonly label: string;
  readonly setPointC: number;
  /** Middle of the latest five readings; null before the first and after 10 s without one. */
  readonly temperatureC: number | null;
  readonly inside: boolean;
  readonly insideForS: number;
}

/** When READY may be expected, s from now. Before the controller throttles nobody can know more than a range. */
export interface ReadyEstimate {
  readonly earliestInS: number;
  readonly likelyInS: number;
  readonly latestInS: number;
}

export interface ReadyState {
  readonly timeS: number | null;
  readonly platens: readonly PlatenReadiness[];
  /** Now: every platen inside its band for the rule's time, none without readings. */
  readonly ready: boolean;
  /** When it first was; null when it never was. */
  readonly firstReadyAtS: number | null;
  /** Shortest of the platens' times inside. */
  readonly insideForS: number;
  /** Null where a platen does not come nearer, or too little was seen. 0 when ready. */
  readonly estimate: ReadyEstimate | null;
}

export interface ReadyWatchOptions {
  readonly rule: ReadyRule;
  readonly platens: readonly WatchedPlaten[];
}

export interface ReadyWatch {
  /** Next readings, in the platens' order; null where a platen gave none (fault, missing). Time never runs backwards. */
  accept(timeS: number, temperaturesC: readonly (number | null)[]): ReadyState;
  readonly state: ReadyState;
}
