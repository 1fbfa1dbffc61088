import type { Notice } from '../screen/TrialScreenState.ts';
import type { BondingState } from './BondingState.ts';

const NOTICE_US = 6_000_000;

/** A message for some seconds; a simulation at ×N shows it as long. */
export function say(
  state: BondingState,
  text: string,
  tone: Notice['tone'] = 'caution',
  atUs = state.nowUs,
): BondingState {
  return { ...state, notice: { text, tone, untilUs: atUs + NOTICE_US * (state.job?.speed ?? 1) } };
}
