import type { RunCheck } from './RunCheck.ts';

/**
 * A bond-line channel reported faults while the press was closed. Unusable when no other bond-line channel tells the
 * crossing or the faulted one never crossed; a fault elsewhere that left the crossing alone is suspect from 1 s on, else a note.
 */
export const probeOpenCircuit: RunCheck = (facts) => {
  const closedS = facts.pressClosed?.timeS ?? facts.fromS;
  const found = facts.bondLine.flatMap((one) => {
    const spans = one.faults.filter((span) => span.toS >= closedS);
    const faultS = spans.reduce((sum, span) => sum + span.toS - span.fromS + facts.intervalS, 0);
    return spans.length === 0 ? [] : [{ one, faultS, fault: spans[0]!.fault, fromS: spans[0]!.fromS }];
  });
  const worst = found.sort((a, b) => b.faultS - a.faultS)[0];
  if (worst === undefined) return null;
  const crossed = facts.crossings.find((each) => each.channel === worst.one.channel + 1)?.crossing ?? null;
  const severity =
    crossed === null
      ? facts.crossing === null
        ? 'unusable'
        : 'suspect'
      : worst.faultS > 1
        ? 'suspect'
        : 'note';
  return {
    code: 'probe-open-circuit',
    severity,
    facts: {
      channel: worst.one.channel + 1,
      role: worst.one.role,
      fault: worst.fault,
      faultS: worst.faultS,
      fromS: worst.fromS - closedS,
    },
  };
};
