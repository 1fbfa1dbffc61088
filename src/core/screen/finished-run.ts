import type { TraceBuckets } from '../chart/TraceBuckets.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { RunResult } from '../run/RunResult.ts';
import { bondLineChannels } from './bond-line-channels.ts';
import type { FinishedRun, RunPoint } from './FinishedRun.ts';

const MOST_POINTS = 400;
/** Shown before press closed, s. */
const BEFORE_S = 5;

/** The bond line of a run that has just finished, cut from the screen's own trace; null without press closed or points. */
export function finishedRun(
  trace: TraceBuckets,
  roles: readonly ChannelRole[],
  result: RunResult,
  recordingId: string,
): FinishedRun | null {
  const closedS = result.pressClosed?.timeS;
  if (closedS === undefined) return null;
  const untilS = result.openedS ?? result.endedS;
  const channels = bondLineChannels(roles);
  const points: RunPoint[] = [];
  for (const bucket of trace.open === null ? trace.closed : [...trace.closed, trace.open]) {
    if (bucket.latestS < closedS - BEFORE_S || bucket.latestS > untilS) continue;
    const seen = channels.flatMap((channel) => {
      const one = bucket.channels[channel];
      return one?.measured ? [one.lastC] : [];
    });
    if (seen.length > 0) points.push({ timeS: bucket.latestS - closedS, temperatureC: Math.min(...seen) });
  }
  return points.length === 0
    ? null
    : {
        recordingId,
        runNumber: result.runNumber,
        good: result.verdict === 'good',
        points: thinnedPoints(points),
      };
}

/** At most 400 points: every so many-th, the last one kept. */
export function thinnedPoints(points: readonly RunPoint[]): readonly RunPoint[] {
  const step = Math.ceil(points.length / MOST_POINTS);
  return step <= 1 ? points : points.filter((_, i) => i % step === 0 || i === points.length - 1);
}
