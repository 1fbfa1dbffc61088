import type { StateName } from '../text/screen-text.ts';
import { bondLineTrouble } from './bond-line-trouble.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** The one word for where the run stands. What makes the figure untrustworthy comes before everything else. */
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
      return state.holdUnseen ? 'hold-not-verified' : 'hold';
    case 'dipped':
      return 'dipped';
    case 'hold-done':
      return state.holdUnseen ? 'hold-not-verified' : 'hold-done';
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
