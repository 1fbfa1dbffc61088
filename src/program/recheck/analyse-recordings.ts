import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { analyseInThreads, type WorkerSetting } from './analyse-in-threads.ts';
import type { RecordingAnalysis } from './RecordingAnalysis.ts';
import { recordingAnalyser } from './recording-analyser.ts';

/** Below this many recordings a second thread costs more than it saves. Measured, see the bench. */
const WORTH_THREADS = 150;
const MOST_THREADS = 4;

/** Stands beside the built program; not there when run from source. */
const WORKER = new URL('./recheck-worker.js', import.meta.url);

/**
 * Analyses recordings, many of them in several threads; in the order of their names, whichever way. `step` is called for
 * each with its trace to be kept, as it is done. Throws what the first recording that cannot be used throws.
 */
export async function analyseRecordings(
  setting: WorkerSetting,
  names: readonly string[],
  step: (analysis: RecordingAnalysis | null) => void,
): Promise<readonly RecordingAnalysis[]> {
  const done = new Array<RecordingAnalysis | null>(names.length).fill(null);
  let left = names.map((_, at) => at);
  const take = (at: number, analysis: RecordingAnalysis | null): void => {
    step(analysis);
    done[at] = analysis === null ? null : { ...analysis, traceToKeep: null };
  };
  const threads = Math.min(MOST_THREADS, availableParallelism());
  if (names.length >= WORTH_THREADS && threads > 1 && !names.includes('-') && existsSync(WORKER)) {
    left = [];
    await analyseInThreads(WORKER, threads, setting, names, ({ from, analyses }) => {
      for (const [offset, analysis] of analyses.entries())
        if (analysis === 'failed') left.push(from + offset);
        else take(from + offset, analysis);
    });
    left.sort((a, b) => a - b);
  }
  if (left.length > 0) await oneAfterTheOther(setting, names, left, take);
  return done.filter((analysis) => analysis !== null);
}

async function oneAfterTheOther(
  { place, asked }: WorkerSetting,
  names: readonly string[],
  which: readonly number[],
  take: (at: number, analysis: RecordingAnalysis | null) => void,
): Promise<void> {
  const analyser = recordingAnalyser(place, asked);
  try {
    for (const at of which) take(at, await analyser.analyse(names[at] as string));
  } finally {
    analyser.close();
  }
}
