import type { RunCheck } from './RunCheck.ts';

/** The bond line fell below target for longer than `longestDipS` while the press was closed. */
export const holdDipped: RunCheck = ({ hold, rules }) => {
  const longest = hold?.dips.reduce((a, b) => (b.toS - b.fromS > a.toS - a.fromS ? b : a), hold.dips[0]!);
  if (hold === null || longest === undefined) return null;
  return {
    code: 'hold-dipped',
    severity: 'note',
    facts: {
      dips: hold.dips.length,
      dipS: longest.toS - longest.fromS,
      lowestC: longest.lowestC,
      targetC: rules.targetC,
      dip: rules.dip,
    },
  };
};
