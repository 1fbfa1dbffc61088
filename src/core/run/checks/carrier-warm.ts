import type { RunCheck } from './RunCheck.ts';

/** Start temperature more than `warmCarrierLimitC` above the room's (RunRules): the soak time comes out short. */
export const carrierWarm: RunCheck = ({ startC, rules, startedAbove }) =>
  startC !== null &&
  rules.ambientC !== null &&
  !startedAbove &&
  startC > rules.ambientC + rules.warmCarrierLimitC
    ? {
        code: 'carrier-warm',
        severity: 'suspect',
        facts: { startC, ambientC: rules.ambientC, limitC: rules.warmCarrierLimitC },
      }
    : null;
