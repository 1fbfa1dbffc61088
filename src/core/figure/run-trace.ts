import type { RunResult } from '../run/RunResult.ts';
import type { RecordingTrace, RunTrace, TraceChannel } from './RunTrace.ts';

/** How much before press closed and after the end of a run a picture shows, s. */
const BEFORE_S = 10;
const AFTER_S = 5;

/** One run cut out of its recording's trace, times counted from press closed (from the first reading where unknown). */
export function runTrace(recording: RecordingTrace, result: RunResult, label: string): RunTrace {
  const zeroS = result.pressClosed?.timeS ?? 0;
  const untilS = Math.max(result.openedS ?? result.endedS, result.crossing?.timeS ?? 0) + AFTER_S;
  return {
    label,
    channels: recording.channels.map((channel) => ({
      ...channel,
      points: channel.points
        .filter(({ timeS }) => timeS >= zeroS - BEFORE_S && timeS <= untilS)
        .map(({ timeS, temperatureC }) => ({ timeS: timeS - zeroS, temperatureC })),
    })),
  };
}

/** The bond-line channel that a run is timed by: the slowest, else the first on the bond line, else none. */
export function timedChannel(trace: RunTrace, result: RunResult): TraceChannel | null {
  const timed = result.crossings.find(
    ({ crossing }) => crossing !== null && crossing.timeS === result.crossing?.timeS,
  );
  const number = timed?.channel ?? trace.channels.find(({ role }) => role.startsWith('bond-line'))?.channel;
  return trace.channels.find(({ channel }) => channel === number) ?? null;
}
