import type { ChannelFacts } from '../RunFacts.ts';
import type { RunCheck } from './RunCheck.ts';

/** Below its set point by more than this at closing, °C (about 9 °F). Common practice, no source. */
const BELOW_SET_POINT_C = 5;
/** Without a set point: below its own later peak by more than this, °C. */
const BELOW_PEAK_C = 8;

/** A platen had not recovered when the press closed. */
export const platenLow: RunCheck = (facts) => {
  const found = facts.platens.flatMap((one: ChannelFacts) => {
    const side = one.role === 'upper-platen' ? 'upper' : 'lower';
    const atClosingC = facts.platenAtClosingC[side];
    const setC = facts.rules.platenSetPointC?.[side];
    const referenceC = setC ?? one.peakC;
    const limitC = setC === undefined ? BELOW_PEAK_C : BELOW_SET_POINT_C;
    if (atClosingC === null || referenceC === null || referenceC - atClosingC <= limitC) return [];
    return [
      {
        role: one.role,
        channel: one.channel + 1,
        lowC: referenceC - atClosingC,
        setPointC: referenceC,
        limitC,
      },
    ];
  });
  const worst = found.sort((a, b) => b.lowC - a.lowC)[0];
  return worst === undefined ? null : { code: 'platen-low', severity: 'suspect', facts: worst };
};
