import { waitText } from '../text/cooling-text.ts';
import { NEXT_WORD } from '../text/next-text.ts';
import type { StateName } from '../text/screen-text.ts';
import { isRunOpen } from './reduce-reading.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** The one thing to do next, in block letters beside the state. */
export function nextAction(state: TrialScreenState, name: StateName): string {
  switch (name) {
    case 'no-reader':
    case 'stale':
      return NEXT_WORD.seeReader;
    case 'refused':
      return NEXT_WORD.seeUnit;
    case 'fault':
    case 'open':
      return NEXT_WORD.seeProbe;
    case 'heating':
      return state.estimate?.kind === 'estimate' ? NEXT_WORD.waitFor(state.estimate.restS) : NEXT_WORD.wait;
    case 'hold':
    case 'dipped':
    case 'opened':
      return NEXT_WORD.wait;
    case 'hold-done':
    case 'hold-done-after-dip':
      return NEXT_WORD.opened;
    case 'hold-not-verified':
      return state.session?.run.phase === 'hold-done' ? NEXT_WORD.opened : NEXT_WORD.wait;
    default:
      return isRunOpen(state) ? NEXT_WORD.opened : beforeNextRun(state);
  }
}

function beforeNextRun({ cooling, ready, setup }: TrialScreenState): string {
  if (cooling?.kind === 'warm')
    return cooling.wait === null ? NEXT_WORD.coolDown : NEXT_WORD.cool(waitText(cooling.wait.waitS));
  return setup.readyCheck === true && !ready.done ? NEXT_WORD.check : NEXT_WORD.closed;
}
