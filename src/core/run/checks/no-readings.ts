import type { RunCheck } from './RunCheck.ts';

/** No bond-line channel gave a single temperature while the press was closed. */
export const noReadings: RunCheck = (facts) => {
  if (facts.bondLine.some((one) => one.validReadings > 0)) return null;
  if (facts.bondLine.some((one) => one.faults.length > 0)) return null;
  return { code: 'no-readings', severity: 'unusable', facts: {} };
};
