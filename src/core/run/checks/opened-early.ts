import type { RunCheck } from './RunCheck.ts';

/**
 * The press opened (mark, contact, or a steep fall of the trace) before the hold was done. The crossing itself stands, so suspect.
 * A record that merely ends before the hold is done is no early opening.
 */
export const openedEarly: RunCheck = ({ hold, openedS, openedBy, rules, crossing, intervalS }) => {
  if (hold === null || openedS === null || openedBy === null || crossing === null) return null;
  const missingS = rules.holdS - hold.countedS;
  // A tenth of a second, or 1 %, short is not early; a fall is seen to a sample interval and a half second only.
  const doubtS = Math.max(0.1, 0.01 * rules.holdS) + (openedBy === 'fall' ? 0.5 + 1.5 * intervalS : 0);
  if (missingS <= doubtS || hold.dips.length > 0 || openedS - crossing.timeS >= rules.holdS) return null;
  return {
    code: 'opened-early',
    severity: 'suspect',
    facts: { heldS: hold.countedS, wantedS: rules.holdS, by: openedBy },
  };
};
