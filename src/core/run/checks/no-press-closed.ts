import type { RunCheck } from './RunCheck.ts';

/** Neither contact, key, option nor onset tells when the press closed. */
export const noPressClosed: RunCheck = (facts) =>
  facts.pressClosed === null ? { code: 'no-press-closed', severity: 'unusable', facts: {} } : null;
