import { LIMITS } from '../limits.ts';
import type { RunCheck } from './RunCheck.ts';

/**
 * Two marks of press closed lie further apart than `closingDisagreementLimitS`, or the rise began later after the mark than
 * heat needs through a part (20 s or half the soak time; judgement, no source): the press was not closed yet.
 */
export const marksDisagree: RunCheck = ({ pressClosed, onset, rules, soakTimeS }) => {
  if (pressClosed === null) return null;
  const { disagreementS } = pressClosed;
  if (disagreementS !== null && disagreementS > rules.closingDisagreementLimitS)
    return {
      code: 'marks-disagree',
      severity: 'suspect',
      facts: {
        disagreementS,
        limitS: rules.closingDisagreementLimitS,
        sources: pressClosed.all
          .map((one) => one.by)
          .filter((by) => by !== 'onset')
          .join(' and '),
      },
    };
  if (onset === null || pressClosed.by === 'onset' || soakTimeS === null) return null;
  const delayS = onset.timeS - pressClosed.timeS;
  const limitS = Math.max(LIMITS.longestDelayS, 0.5 * soakTimeS);
  if (delayS <= limitS) return null;
  return {
    code: 'marks-disagree',
    severity: 'suspect',
    facts: { disagreementS: delayS, limitS, sources: `${pressClosed.by} and onset` },
  };
};
