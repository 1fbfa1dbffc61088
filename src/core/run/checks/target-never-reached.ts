import type { RunCheck } from './RunCheck.ts';

/** No sustained crossing although the bond line was seen below target. */
export const targetNeverReached: RunCheck = (facts) => {
  if (facts.crossing !== null || facts.startedAbove) return null;
  if (facts.bondLine.every((one) => one.validReadings === 0)) return null;
  const below = facts.crossings.filter((one) => one.crossing === null);
  return {
    code: 'target-never-reached',
    severity: 'unusable',
    facts: {
      targetC: facts.rules.targetC,
      ...(facts.peakC === null ? {} : { peakC: facts.peakC }),
      ...(below.length < facts.crossings.length ? { channel: below[0]!.channel, role: below[0]!.role } : {}),
    },
  };
};
