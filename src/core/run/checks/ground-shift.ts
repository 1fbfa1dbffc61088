import { median } from '../median.ts';
import type { RunCheck } from './RunCheck.ts';

/** At least this many steps, both ways. Judgement, no source. */
const LEAST_STEPS = 4;

/** A value steps up and down by about the same amount again and again: it shifts as a heater switches or another probe is plugged in. */
export const groundShift: RunCheck = (facts) => {
  const shifting = facts.bondLine.filter((one) => {
    const up = one.jumps.filter((jump) => jump.stepC > 0).length;
    const down = one.jumps.length - up;
    return one.jumps.length >= LEAST_STEPS && up >= 2 && down >= 2;
  });
  const worst = shifting.sort((a, b) => b.jumps.length - a.jumps.length)[0];
  if (worst === undefined) return null;
  return {
    code: 'ground-shift',
    severity: 'suspect',
    facts: {
      channel: worst.channel + 1,
      role: worst.role,
      channels: shifting.length,
      shifts: worst.jumps.length,
      shiftC: median(worst.jumps.map((jump) => Math.abs(jump.stepC)))!,
    },
  };
};
