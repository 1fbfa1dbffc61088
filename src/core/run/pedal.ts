import { LIMITS } from './limits.ts';
import type { RunUnderWay } from './RunUnderWay.ts';

/**
 * A contact that closes once more in a run, the bond line not falling, is a pedal: in a run that a contact marked, or one
 * marked by key 30 s ago or more that has crossed. Where the bond line falls the press was opened, and this is a closing.
 */
export function contactAgain(run: RunUnderWay, timeS: number): boolean {
  if (run.opened !== null || run.fall.startedS !== null) return false;
  if (run.marks.contact !== null) return true;
  return run.marks.key !== null && run.provisional !== null && timeS - run.marks.key.timeS >= 30;
}

/** Whether a contact that lets go says that the press opened: not within 2 s, and in a run with a pedal not before 20 s. */
export function letGoIsOpening(run: RunUnderWay, heldS: number): boolean {
  return heldS >= (run.pedal ? LIMITS.pedalHeldS : LIMITS.pedalTapS);
}
