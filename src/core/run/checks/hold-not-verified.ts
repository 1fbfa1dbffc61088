import type { RunCheck } from './RunCheck.ts';

/** The hold was not seen in full: the record ended before, or a gap or fault lies inside it. */
export const holdNotVerified: RunCheck = ({ hold, rules, endedBy, openedS }) => {
  if (hold === null || hold.verified) return null;
  const why =
    hold.countedS < rules.holdS
      ? endedBy === 'end-of-record' && openedS === null
        ? 'record-ended'
        : 'short'
      : 'gap';
  return {
    code: 'hold-not-verified',
    severity: 'note',
    facts: { heldS: hold.countedS, wantedS: rules.holdS, why },
  };
};
