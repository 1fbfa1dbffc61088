import type { RunCheck } from './RunCheck.ts';

/** A step within this of press closed, s, and at least this large, °C. Judgement, no source. */
const NEAR_CLOSING_S = 1.5;
const LEAST_STEP_C = 4;

/** The reading steps the moment the press closes: a lead crushed at the ring's edge makes a second junction there. */
export const secondJunction: RunCheck = (facts) => {
  const closedS = facts.pressClosed?.timeS;
  if (closedS === undefined) return null;
  for (const one of facts.bondLine) {
    const step = one.jumps.find(
      (jump) =>
        jump.stays &&
        Math.abs(jump.timeS - closedS) <= NEAR_CLOSING_S &&
        Math.abs(jump.stepC) >= LEAST_STEP_C,
    );
    // A shift that goes back and forth is another matter.
    if (step === undefined || one.jumps.filter((jump) => jump.timeS > closedS).length > 4) continue;
    return {
      code: 'second-junction',
      severity: 'suspect',
      facts: { channel: one.channel + 1, role: one.role, stepC: step.stepC },
    };
  }
  return null;
};
