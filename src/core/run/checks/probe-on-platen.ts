import { collectSamples } from '../collect-samples.ts';
import type { Jump } from '../find-jumps.ts';
import type { ChannelFacts, RunFacts } from '../RunFacts.ts';
import { knownPlatens } from './known-platens.ts';
import type { RunCheck } from './RunCheck.ts';

/** No bond line behind a carrier rises from 15 % to 85 % of the platen's excess in less than this, s. Judgement, no source. */
const LEAST_RISE_S = 6;
/** A sudden step of at least this in the middle of the rise is a touch, °C. Judgement, no source. */
const TOUCH_C = 20;
const NEAR_PLATEN_C = 20;

/** A bond-line probe shows the platen's temperature at once, or jumps to it: it touches a platen. */
export const probeOnPlaten: RunCheck = (facts) => {
  const platens = knownPlatens(facts);
  for (const one of facts.bondLine) {
    const where = { channel: one.channel + 1, role: one.role };
    if (platens !== null && one.restC !== null) {
      const riseS = riseTime(facts, one, one.restC, platens.hottestC);
      if (riseS !== null && riseS < LEAST_RISE_S)
        return {
          code: 'probe-on-platen',
          severity: 'unusable',
          facts: { ...where, levelC: one.peakC ?? platens.hottestC, platenC: platens.hottestC, riseS },
        };
    }
    const closedS = facts.pressClosed?.timeS ?? facts.fromS;
    const touch = one.jumps.find(
      (jump) => jump.stays && jump.stepC >= TOUCH_C && jump.timeS > closedS + 3 && !comesBack(one, jump),
    );
    if (touch === undefined) continue;
    const near = platens !== null && touch.levelC > platens.coldestC - NEAR_PLATEN_C;
    const crossing = facts.crossings.find((each) => each.channel === one.channel + 1)?.crossing ?? null;
    const jumpedOver = crossing !== null && Math.abs(crossing.timeS - touch.timeS) < 3;
    return {
      code: 'probe-on-platen',
      severity: near || jumpedOver ? 'unusable' : 'suspect',
      facts: {
        ...where,
        levelC: touch.levelC,
        jumpC: touch.stepC,
        atS: touch.timeS - closedS,
        ...(near ? { platenC: platens.hottestC } : {}),
      },
    };
  }
  return null;
};

/** True where the jump only makes good a drop of like size shortly before: a probe that lost touch and found it again. */
function comesBack(one: ChannelFacts, jump: Jump): boolean {
  return one.jumps.some(
    (drop) => drop.stepC < -0.4 * jump.stepC && drop.timeS < jump.timeS && drop.timeS > jump.timeS - 30,
  );
}

/** Seconds from 15 % to 85 % of the way from rest to platen, two readings in a row; null when too coarse or never. */
function riseTime(facts: RunFacts, one: ChannelFacts, restC: number, platenC: number): number | null {
  const wayC = platenC - restC;
  if (wayC < 50 || facts.intervalS > 1) return null;
  const fromS = facts.pressClosed?.timeS ?? facts.fromS;
  const { timesS, valuesC } = collectSamples(facts.trace, one.channel, fromS, facts.openedS ?? facts.endedS);
  const reach = (share: number): number | null => {
    for (let i = 1; i < timesS.length; i++)
      if (Math.min(valuesC[i - 1]!, valuesC[i]!) >= restC + share * wayC) return timesS[i - 1]!;
    return null;
  };
  const [low, high] = [reach(0.15), reach(0.85)];
  return low === null || high === null ? null : high - low;
}
