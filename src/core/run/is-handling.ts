import type { RunUnderWay } from './RunUnderWay.ts';

/** An unmarked rise that got less than a quarter of the way to the target: a hand at the probe, no run. */
export function isHandling(run: RunUnderWay): boolean {
  if (run.marked || run.marks.option !== null || run.provisional !== null) return false;
  return run.fall.shareOfWay(run.around.rules.targetC) < 0.25;
}
