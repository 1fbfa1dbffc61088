import type { RunCheck } from './RunCheck.ts';

/** Channels may cross this far apart: 2 s or 5 % of the soak time. Common practice, no source. */
const LEAST_LIMIT_S = 2;
const SHARE_OF_SOAK = 0.05;

/** Probes at inner edge, middle and outer edge reach the target at different times: platen and carrier do not meet flat. */
export const unevenBondLine: RunCheck = (facts) => {
  const times = facts.crossings.flatMap((one) =>
    one.crossing === null ? [] : [{ ...one, at: one.crossing }],
  );
  if (times.length < 2) return null;
  const fastest = times.reduce((a, b) => (b.at.timeS < a.at.timeS ? b : a));
  const slowest = times.reduce((a, b) => (b.at.timeS > a.at.timeS ? b : a));
  const differenceS = slowest.at.timeS - fastest.at.timeS;
  const doubtS = 3 * Math.hypot(slowest.at.standardUncertaintyS, fastest.at.standardUncertaintyS);
  const limitS = Math.max(LEAST_LIMIT_S, SHARE_OF_SOAK * (facts.soakTimeS ?? 0), doubtS);
  if (differenceS <= limitS) return null;
  return {
    code: 'uneven-bond-line',
    severity: 'suspect',
    facts: { differenceS, limitS, slowest: slowest.role, fastest: fastest.role },
  };
};
