import { hostname } from 'node:os';
import type { BondingCycle } from '../../core/bonding/BondingCycle.ts';
import { isForsaken } from '../../core/bonding/ClosingUnderWay.ts';
import { withRun } from '../../core/bonding/with-run.ts';
import { DwellwrightError } from '../../core/DwellwrightError.ts';
import type { RunResult } from '../../core/run/RunResult.ts';
import type { Store } from '../../core/store/Store.ts';

/**
 * Closings that a program did not finish (killed, no power): each is logged as far as it was watched, its hold read from
 * the recording. Those of a program that still runs are left to it. Returns what was logged.
 */
export async function logForsakenClosings(store: Store): Promise<readonly BondingCycle[]> {
  const here = { nowMs: Date.now(), hostName: hostname(), runs: processRuns };
  const logged: BondingCycle[] = [];
  for (const closing of store.closings()) {
    if (!isForsaken(closing, here)) continue;
    const cycle = withRun(closing.cycle, await runOf(store, closing.cycle));
    try {
      store.saveCycle(cycle);
    } catch (error) {
      // Another program that was started at the same moment was quicker.
      if (store.cycles().some(({ cycleId }) => cycleId === cycle.cycleId)) continue;
      throw error;
    }
    logged.push(cycle);
  }
  return logged;
}

/** The run that the recording holds of a closing; null without a probe, a recording, or where it cannot be read. */
async function runOf(store: Store, cycle: BondingCycle): Promise<RunResult | null> {
  const { recordingId, recordedAtS = null } = cycle;
  const recording = recordingId === null ? undefined : store.recording(recordingId);
  if (recording === undefined || cycle.hold === 'not-measured') return null;
  const [{ analyseEntries }, { recordingDecoder }, { correctionsOf, sourceConditions }] = await Promise.all([
    import('../../core/session/analyse-entries.ts'),
    import('../../core/exchange/recording-decoder.ts'),
    import('../sources/analyse-source.ts'),
  ]);
  const { head } = recording;
  try {
    const { rules, probes } = sourceConditions({ head }, {});
    const { results } = analyseEntries(recording.entries(), {
      decoder: recordingDecoder(head).decoder,
      roles: head.roles,
      rules,
      probeCorrections: correctionsOf(probes),
    });
    return (
      results.findLast(
        ({ pressClosed }) =>
          pressClosed !== null && recordedAtS !== null && Math.abs(pressClosed.timeS - recordedAtS) < 0.5,
      ) ?? null
    );
  } catch (error) {
    // A head or entries that cannot be read: the closing is still logged, its hold not verified.
    if (error instanceof DwellwrightError) return null;
    throw error;
  }
}

function processRuns(processId: number): boolean {
  try {
    process.kill(processId, 0);
    return true;
  } catch (error) {
    // It runs, under another user.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
