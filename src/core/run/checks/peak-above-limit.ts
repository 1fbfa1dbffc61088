import type { RunCheck } from './RunCheck.ts';

/** The bond line got hotter than the assembly allows: says nothing against the soak time, much against the part. */
export const peakAboveLimit: RunCheck = ({ peakC, rules }) => {
  const limitC = rules.highestPeakC ?? null;
  if (peakC === null || limitC === null || peakC <= limitC) return null;
  return { code: 'peak-above-limit', severity: 'note', facts: { peakC, limitC } };
};
