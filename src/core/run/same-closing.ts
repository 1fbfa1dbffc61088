import type { RunUnderWay } from './RunUnderWay.ts';

/** A mark belongs to the open run unless it lies after the run is over or the run already has a mark of that source. */
export function sameClosing(run: RunUnderWay, by: 'contact' | 'key', timeS: number): boolean {
  if (run.opened !== null) return false;
  if (run.marks[by] !== null) return false;
  if (by === 'key' && run.marks.contact !== null) return true;
  if (!run.marked) {
    // What comes after the crossing cannot have closed this run.
    const crossedS = run.provisional?.timeS ?? Number.POSITIVE_INFINITY;
    return timeS < crossedS && (run.fall.startedS === null || timeS < run.fall.startedS);
  }
  return Math.abs(timeS - run.pressClosed!.timeS) < 30 || run.provisional === null;
}
