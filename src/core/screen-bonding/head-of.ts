import type { BondingState, CycleUnderWay } from '../bonding/BondingState.ts';
import { bondLineNow, hasProbe } from '../bonding/bond-line-now.ts';
import { isEarly } from '../bonding/finish-cycle.ts';
import { platensNow } from '../bonding/platens-now.ts';
import type { SegmentRole } from '../chart/StyledRow.ts';
import { BONDING_TEXT } from '../text/bonding-text.ts';

export type BondingWord = keyof typeof BONDING_TEXT.state;

/** What a glance must tell of the time: the main figure, what it is, the state, and what the hand does next. */
export interface Head {
  readonly figureS: number;
  /** '+' for time beyond the dwell: without it, it would pass for time to go. */
  readonly sign: '' | '+';
  readonly caption: string;
  readonly word: BondingWord;
  readonly hold: 'verified' | 'not-verified' | null;
  readonly next: 'next-closing' | 'next-opening' | null;
  readonly role: SegmentRole;
}

export function headOf(state: BondingState): Head {
  const { job, under, nowUs } = state;
  const dwellS = job?.recipe.dwellS ?? 0;
  if (under === null) {
    const word = readiness(state);
    const role = word === 'ready' ? 'good' : word === 'no-timer-reader' ? 'strong' : 'caution';
    return {
      figureS: dwellS,
      sign: '',
      caption: BONDING_TEXT.set,
      word,
      hold: null,
      next: 'next-closing',
      role,
    };
  }
  if (under.openedUs !== null) {
    const heldS = (under.openedUs - under.closedUs) / 1e6;
    const early = isEarly(heldS, dwellS);
    return {
      figureS: heldS,
      sign: '',
      caption: BONDING_TEXT.held,
      word: early ? 'early' : 'opened',
      hold: null,
      next: null,
      role: early ? 'caution' : 'strong',
    };
  }
  const leftS = dwellS - (nowUs - under.closedUs) / 1e6;
  if (leftS > 0)
    return {
      figureS: Math.ceil(leftS),
      sign: '',
      caption: BONDING_TEXT.toGo,
      word: 'dwell',
      // Told as soon as it is so, not only when the dwell is over.
      hold: hasProbe(state) && holdUnseen(state, under) ? 'not-verified' : null,
      next: null,
      role: 'strong',
    };
  const hold = hasProbe(state) ? (holdVerified(state, under) ? 'verified' : 'not-verified') : null;
  return {
    figureS: Math.floor(-leftS),
    sign: '+',
    caption: BONDING_TEXT.over,
    word: 'dwell-done',
    hold,
    next: 'next-opening',
    role: hold === 'not-verified' ? 'caution' : 'good',
  };
}

/** A part of the hold is missing: readings old or faulted, or a gap that the readings' path found. */
export function holdUnseen({ session }: BondingState, under: CycleUnderWay): boolean {
  return under.unseen || session?.run.holdSeen === false;
}

/** As far as is known now: met, nothing missing, and the probe still gives the temperature. */
export function holdVerified(state: BondingState, under: CycleUnderWay): boolean {
  const met = state.session?.run.phase === 'hold-done';
  return met && !holdUnseen(state, under) && bondLineNow(state).kind === 'known';
}

function readiness(state: BondingState): BondingWord {
  const platens = platensNow(state);
  if (state.job?.roles == null || platens.length === 0) return 'no-timer-reader';
  if (platens.some(({ inside }) => inside === false)) return 'platens-cold';
  return platens.some(({ inside }) => inside === null) ? 'platens-unknown' : 'ready';
}
