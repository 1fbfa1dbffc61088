import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { analyseInThreads, type WorkerSetting } from './analyse-in-threads.ts';
import { analyseShare } from './analyse-share.ts';
import type { RecordingAnalysis } from './RecordingAnalysis.ts';
import { recordingAnalyser } from './recording-analyser.ts';

/** Below this many recordings a further thread costs more than it saves. Measured, see the bench. */
const WORTH_THREADS = 100;
const MOST_THREADS = 4;

/** Stands beside the built program; not there when run from source. */
const WORKER = new URL('./recheck-worker.js', import.meta.url);

/**
 * Analyses recordings, many of them in several threads; in the order of their names, whichever way. `step` is called for
 * each, with its trace to be kept, as it is done. Throws what the first recording that cannot be used throws.
 */
export async function analyseRecordings(
  setting: WorkerSetting,
  names: readonly string[],
  step: (analysis: RecordingAnalysis | null) => void,
): Promise<readonly RecordingAnalysis[]> {
  const done = new Array<RecordingAnalysis | null>(names.length).fill(null);
  const take = (at: number, analysis: RecordingAnalysis | null): void => {
    step(analysis);
    done[at] = analysis === null ? null : { ...analysis, traceToKeep: null };
  };
  const analyser = recordingAnalyser(setting.place, setting.asked);
  try {
    let left = names.map((_, at) => at);
    const furtherThreads = furtherThreadsFor(names);
    if (furtherThreads > 0) {
      left = [];
      await analyseInThreads(
        { worker: WORKER, furtherThreads, setting, names },
        (share) => analyseShare(analyser, share),
        ({ from, analyses }) => {
          for (const [offset, analysis] of analyses.entries())
            if (analysis === 'failed') left.push(from + offset);
            else take(from + offset, analysis);
        },
      );
      left.sort((a, b) => a - b);
    }
    for (const at of left) take(at, await analyser.analyse(names[at] as string));
  } finally {
    analyser.close();
  }
  return done.filter((analysis) => analysis !== null);
}

/** None for few recordings, on one processor, and where standard input is among them. */
function furtherThreadsFor(names: readonly string[]): number {
  if (names.length < WORTH_THREADS || names.includes('-') || !existsSync(WORKER)) return 0;
  return Math.min(MOST_THREADS, availableParallelism()) - 1;
}
