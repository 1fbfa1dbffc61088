import type { BondingCycle } from './BondingCycle.ts';

/**
 * A closing that is not logged yet, kept in the store while it runs: a program that is killed loses nothing. It is
 * renewed about once a second, and taken out as its cycle is logged.
 */
export interface ClosingUnderWay {
  /** The cycle as it would be logged had the program stopped at `seenAt`. */
  readonly cycle: BondingCycle;
  /** Wall time of the latest look, ISO 8601. */
  readonly seenAt: string;
  /** Which program watches it. */
  readonly hostName: string;
  readonly processId: number;
}

/** A watching program that has not looked for so long is taken for gone, though its process number is in use, s. Judgement, no source. */
const GONE_AFTER_S = 60;

/**
 * Whether a closing's program is gone, so that the closing is to be logged by the one that finds it. `runs` tells
 * whether a process of this host runs; of another host only the time of its latest look is known.
 */
export function isForsaken(
  { seenAt, hostName, processId }: Omit<ClosingUnderWay, 'cycle'>,
  here: { readonly nowMs: number; readonly hostName: string; readonly runs: (processId: number) => boolean },
): boolean {
  if (hostName === here.hostName && !here.runs(processId)) return true;
  return Math.abs(here.nowMs - Date.parse(seenAt)) / 1000 > GONE_AFTER_S;
}
