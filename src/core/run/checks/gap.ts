import { nearCrossing } from './gap-at-crossing.ts';
import type { RunCheck } from './RunCheck.ts';

/** Readings are missing somewhere in the run, away from the crossing. */
export const gap: RunCheck = ({ gaps, pressClosed, fromS, crossing }) => {
  const real = gaps.filter(
    (one) =>
      one.cause !== 'fault' &&
      one.cause !== 'reader-restarted' &&
      one.cause !== 'clock-backwards' &&
      (crossing === null || !nearCrossing(one, crossing)),
  );
  if (real.length === 0) return null;
  const longest = real.reduce((a, b) => (b.toS - b.fromS > a.toS - a.fromS ? b : a));
  return {
    code: 'gap',
    severity: 'note',
    facts: {
      gaps: real.length,
      gapS: longest.toS - longest.fromS,
      fromS: longest.fromS - (pressClosed?.timeS ?? fromS),
      cause: longest.cause,
    },
  };
};
