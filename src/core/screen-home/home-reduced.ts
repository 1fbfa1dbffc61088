import type { Notice } from '../screen/TrialScreenState.ts';
import type { HomeIntent } from './HomeEvent.ts';
import type { HomeState } from './HomeState.ts';

export type HomeReduced = readonly [HomeState, readonly HomeIntent[]];

const SHOWN_US = 8_000_000;

/** The state with a short message that goes away by itself after 8 s. */
export function said(state: HomeState, text: string, tone: Notice['tone']): HomeState {
  return { ...state, notice: { text, tone, untilUs: state.nowUs + SHOWN_US } };
}
