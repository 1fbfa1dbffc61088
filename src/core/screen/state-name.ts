import type { StateName } from '../text/screen-text.ts';
import { bondLineTrouble } from './bond-line-trouble.ts';
import { holdDips, isHoldUnseen } from './hold-standing.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/**
 * The one word for where the run stands. What makes the figure untrustworthy comes before everything else. A hold that
 * dipped is not verified until the rule's own condition is met in full, and then the word says "after a dip"; one
 * with readings missing stays unverified.
 */
export function stateName(state: TrialScreenState): StateName {
  const phase = state.session?.run.phase ?? 'waiting';
  const counting = phase === 'crossed' || phase === 'dipped';
  const trouble = bondLineTrouble(state);
  if (trouble !== null) {
    if (counting) return 'hold-not-verified';
    if (trouble.kind === 'fault') return trouble.fault === 'open-circuit' ? 'open' : 'fault';
    return trouble.kind;
  }
  if (state.session?.run.spoilt) return 'spoilt';
  switch (phase) {
    case 'heating':
      return 'heating';
    case 'crossed':
      return isHoldUnseen(state) || holdDips(state) > 0 ? 'hold-not-verified' : 'hold';
    case 'dipped':
      return 'dipped';
    case 'hold-done':
      if (isHoldUnseen(state)) return 'hold-not-verified';
      return holdDips(state) > 0 ? 'hold-done-after-dip' : 'hold-done';
    case 'opened':
      return 'opened';
    case 'waiting':
      return finished(state) ?? 'waiting';
  }
}

function finished({ lastResult }: TrialScreenState): StateName | null {
  if (lastResult === null) return null;
  return lastResult.reasons.some((reason) => reason.code === 'spoilt') ? 'spoilt' : lastResult.verdict;
}
