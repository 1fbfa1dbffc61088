import { HOME_TEXT } from '../text/home-text.ts';
import { readerGuideStep } from './guide-steps.ts';
import type { HomeState } from './HomeState.ts';
import { said } from './home-reduced.ts';

/** Channels are kept per press: without one there is nothing to keep them with. */
export function askReader(state: HomeState, after: 'set-up' | 'trial' | 'home'): HomeState {
  return state.plan.pressName === null
    ? said(state, HOME_TEXT.pressFirst, 'caution')
    : readerGuideStep(state, after);
}
