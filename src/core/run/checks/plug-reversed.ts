import type { RunCheck } from './RunCheck.ts';

/** A fall of this much below rest while the press heats, °C. Common practice, no source. */
const FALL_C = 15;

/** A bond-line channel falls while the press heats: the plug is reversed, the emf counts backwards. */
export const plugReversed: RunCheck = (facts) => {
  for (const one of facts.bondLine) {
    if (one.restC === null || one.lowestC === null || one.peakC === null) continue;
    const fallC = one.restC - one.lowestC;
    if (fallC < FALL_C || one.peakC > one.restC + FALL_C || one.restC > facts.rules.targetC / 2) continue;
    return {
      code: 'plug-reversed',
      severity: 'unusable',
      facts: { channel: one.channel + 1, role: one.role, fallC, restC: one.restC, lowestC: one.lowestC },
    };
  }
  return null;
};
