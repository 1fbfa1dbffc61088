import type { RunCheck } from './RunCheck.ts';

/** The bond line was at or above target from the first reading on: there is no crossing to find. */
export const startedAboveTarget: RunCheck = ({ startedAbove, startC, rules }) =>
  startedAbove || (startC !== null && startC >= rules.targetC)
    ? {
        code: 'started-above-target',
        severity: 'unusable',
        facts: { targetC: rules.targetC, ...(startC === null ? {} : { startC }) },
      }
    : null;
