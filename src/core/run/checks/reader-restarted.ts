import type { RunCheck } from './RunCheck.ts';

/** The reader's counters began anew, or its clock ran backwards, during the run. */
export const readerRestarted: RunCheck = ({ gaps, pressClosed, fromS }) => {
  const restart = gaps.find((one) => one.cause === 'reader-restarted' || one.cause === 'clock-backwards');
  if (restart === undefined) return null;
  return {
    code: 'reader-restarted',
    severity: 'note',
    facts: {
      fromS: restart.fromS - (pressClosed?.timeS ?? fromS),
      gapS: restart.toS - restart.fromS,
      cause: restart.cause,
    },
  };
};
