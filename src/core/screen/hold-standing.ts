import type { TrialScreenState } from './TrialScreenState.ts';

/** Readings of the bond line stopped or failed inside the hold, seen by the screen or by the count itself. */
export function isHoldUnseen({ holdUnseen, session }: TrialScreenState): boolean {
  return holdUnseen || session?.run.holdSeen === false;
}

/** Dips below the target that began before the hold was done. */
export function holdDips({ session }: TrialScreenState): number {
  return session?.run.holdDips ?? 0;
}
