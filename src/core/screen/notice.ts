import { speedOf } from './pace.ts';
import type { Notice, TrialScreenState } from './TrialScreenState.ts';

const SHOWN_US = 5_000_000;

/** The state with a short message that goes away by itself after 5 s. */
export function withNotice(
  state: TrialScreenState,
  text: string,
  tone: Notice['tone'],
  atUs: number,
): TrialScreenState {
  return { ...state, notice: { text, tone, untilUs: atUs + SHOWN_US * speedOf(state) } };
}

/** A caution that is also told in block letters: a key was not taken, and nobody may think that it was. */
export function withLargeNotice(
  state: TrialScreenState,
  text: string,
  large: string,
  atUs: number,
): TrialScreenState {
  const told = withNotice(state, text, 'caution', atUs);
  return told.notice === null ? told : { ...told, notice: { ...told.notice, large } };
}
