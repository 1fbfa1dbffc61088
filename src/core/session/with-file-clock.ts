import type { RunReason, RunResult } from '../run/RunResult.ts';

/**
 * A logger's file has one clock only. Where its times ran backwards between press closed and crossing, nobody knows how
 * long that took: the run is suspect. (A live reader that restarts is timed by the host meanwhile.)
 */
export function withFileClock(result: RunResult): RunResult {
  const { pressClosed, crossing, verdict } = result;
  if (pressClosed === null || crossing === null || verdict === 'unusable') return result;
  const soakS = crossing.timeS - pressClosed.timeS;
  const back = result.reasons.find(({ code, facts }) => {
    if (code === 'gap') return facts.cause === 'clock-backwards';
    return code === 'reader-restarted' && Number(facts.fromS) <= soakS;
  });
  if (back === undefined) return result;
  const reason: RunReason = { code: 'clock-backwards', severity: 'suspect', facts: {} };
  return { ...result, verdict: 'suspect', reasons: [reason, ...result.reasons] };
}
