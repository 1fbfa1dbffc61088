import type { ChannelFacts, RunFacts } from '../RunFacts.ts';
import { knownPlatens } from './known-platens.ts';

export interface WrongPlateau {
  readonly one: ChannelFacts;
  readonly plateauC: number;
  readonly platenC: number;
  readonly high: boolean;
  /** Departure of the fitted curve after closing, s. */
  readonly delayS: number;
  /** The same of the quickest other bond-line channel; null without one. */
  readonly otherDelayS: number | null;
}

/** The fitted curve must level off within this share of the platens' excess. Judgement, no source. */
const HIGH_SHARE = 0.06;
const LOW_SHARE = 0.08;

/**
 * A bond-line channel whose fitted curve levels off above the hotter platen, or well below the colder one. Channels that
 * stand off at rest, or rise too little to fit, are left out: another check names those.
 */
export function wrongPlateau(facts: RunFacts): WrongPlateau | null {
  const platens = knownPlatens(facts);
  const closedS = facts.pressClosed?.timeS;
  if (platens === null || closedS === undefined) return null;
  for (const one of facts.bondLine) {
    const { fit, restC, peakC } = one;
    if (fit === null || restC === null || peakC === null) continue;
    const wayC = platens.coldestC - restC;
    const seen = (peakC - restC) / (fit.plateauC - restC);
    if (wayC < 50 || seen < 0.8 || fit.rmsC > 0.03 * wayC) continue;
    const high = fit.plateauC > platens.hottestC + HIGH_SHARE * wayC && peakC > platens.hottestC;
    const low = fit.plateauC < platens.coldestC - LOW_SHARE * wayC;
    if (!high && !low) continue;
    const others = facts.bondLine.flatMap((other) =>
      other === one || other.fit === null ? [] : [other.fit.departsS - closedS],
    );
    return {
      one,
      plateauC: fit.plateauC,
      platenC: high ? platens.hottestC : platens.coldestC,
      high,
      delayS: fit.departsS - closedS,
      otherDelayS: others.length === 0 ? null : Math.min(...others),
    };
  }
  return null;
}

/** Later than another bond-line probe by this, or without one after closing by this, is a covered tip, s. Judgement, no source. */
export const LATE_START_S = { againstOther: 2.5, alone: 5 } as const;

/** True where the slow start says that heat has to pass something before it reaches the tip. */
export function startsLate({ delayS, otherDelayS }: WrongPlateau): boolean {
  return otherDelayS === null
    ? delayS > LATE_START_S.alone
    : delayS - otherDelayS > LATE_START_S.againstOther;
}
