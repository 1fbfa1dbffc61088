import type { RunCheck } from './RunCheck.ts';

/** Scatter of neighbouring readings, °C. Common practice, no source. */
const NOISY_C = 1.2;

/** Readings scatter more than a sound probe's do. */
export const noisy: RunCheck = (facts) => {
  // Neighbours of a slow logger differ by the heating itself.
  if (facts.intervalS > 1) return null;
  const one = facts.bondLine.find((each) => each.noiseC > NOISY_C && each.noiseC > each.resolutionC);
  return one === undefined
    ? null
    : {
        code: 'noisy',
        severity: 'note',
        facts: { channel: one.channel + 1, role: one.role, noiseC: one.noiseC },
      };
};
