import type { RunCheck } from './RunCheck.ts';

/** The operator marked the run as spoilt. */
export const spoilt: RunCheck = (facts) =>
  facts.spoiltReason === null
    ? null
    : { code: 'spoilt', severity: 'unusable', facts: { why: facts.spoiltReason } };
