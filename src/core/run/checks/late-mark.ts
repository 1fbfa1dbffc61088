import type { RunCheck } from './RunCheck.ts';

/**
 * The rise began before the mark: heat cannot arrive before the press closes, so the mark came late and the soak time is short.
 * Limit: `closingDisagreementLimitS` of the rules, or three standard uncertainties of the onset if larger.
 */
export const lateMark: RunCheck = ({ pressClosed, onset, rules }) => {
  if (pressClosed === null || onset === null || !onset.baselineSeen || pressClosed.by === 'onset')
    return null;
  const lateS = pressClosed.timeS - onset.timeS;
  const limitS = Math.max(rules.closingDisagreementLimitS, 3 * onset.standardUncertaintyS);
  if (lateS <= limitS) return null;
  return { code: 'late-mark', severity: 'suspect', facts: { lateS, limitS, by: pressClosed.by } };
};
