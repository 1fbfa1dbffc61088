import { bondLineChannels } from '../../core/screen/bond-line-channels.ts';
import type { FinishedRun } from '../../core/screen/FinishedRun.ts';
import { thinnedPoints } from '../../core/screen/finished-run.ts';
import type { Store } from '../../core/store/Store.ts';
import { loadTraces } from '../home/load-traces.ts';

/** Shown before press closed, s. */
const BEFORE_S = 5;

/** The bond lines of the runs that a trial has already, read back from its recordings, counted from press closed. */
export function earlierRuns(store: Store, trialId: string): readonly FinishedRun[] {
  const runs = store.trialRuns(trialId);
  return loadTraces(
    store,
    trialId,
    runs.map((_, i) => i),
  ).flatMap(({ run, roles, closedKnown, readings, openedS }) => {
    const of = runs[run];
    if (of === undefined || !closedKnown) return [];
    const channels = bondLineChannels(roles);
    const untilS = openedS ?? Number.POSITIVE_INFINITY;
    const points = readings.flatMap(({ timeS, values }) => {
      if (timeS < -BEFORE_S || timeS > untilS) return [];
      const seen = channels.flatMap((channel) => {
        const value = values[channel];
        return value?.kind === 'temperature' ? [value.temperatureC] : [];
      });
      return seen.length === 0 ? [] : [{ timeS, temperatureC: Math.min(...seen) }];
    });
    return [{ recordingId: of.recordingId, runNumber: of.result.runNumber, points: thinnedPoints(points) }];
  });
}
