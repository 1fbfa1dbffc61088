import type { TrialScreenState } from './TrialScreenState.ts';

/** Seconds since press closed, going on between readings by the host's clock; null without a run. */
export function elapsedS(state: TrialScreenState): number | null {
  const closedS = state.session?.run.pressClosed?.timeS;
  if (closedS === undefined || state.latest === null || state.latestUs === null) return null;
  return Math.max(0, state.latest.timeS - closedS + Math.max(0, state.nowUs - state.latestUs) / 1e6);
}
