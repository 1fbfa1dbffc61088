import { Worker } from 'node:worker_threads';
import type { AskedRules, RecordingAnalysis, RecordingPlace } from './RecordingAnalysis.ts';

export interface WorkerSetting {
  readonly place: RecordingPlace;
  readonly asked: AskedRules;
}

/** Recordings a thread is sent at a time: small enough that all threads end together. */
const A_SHARE = 10;
/** Two shares wait at each thread, so that none stands idle while its answer travels. */
const AT_ONCE = 2;

export interface ShareAsked {
  /** Place of the first one among all names. */
  readonly from: number;
  readonly names: readonly string[];
}

export interface ShareAnalysed {
  readonly from: number;
  readonly analyses: readonly (RecordingAnalysis | null | 'failed')[];
}

/**
 * Analyses recordings in several threads; `take` hears each share as it comes, in any order. Rejects where a thread
 * itself dies.
 */
export function analyseInThreads(
  worker: URL,
  threads: number,
  setting: WorkerSetting,
  names: readonly string[],
  take: (share: ShareAnalysed) => void,
): Promise<void> {
  const workers = Array.from({ length: threads }, () => new Worker(worker, { workerData: setting }));
  let next = 0;
  let open = names.length;
  const ended = new Promise<void>((resolve, reject) => {
    const send = (to: Worker): void => {
      if (next >= names.length) return;
      to.postMessage({ from: next, names: names.slice(next, next + A_SHARE) } satisfies ShareAsked);
      next += A_SHARE;
    };
    for (const one of workers) {
      one.on('error', reject);
      one.on('message', (share: ShareAnalysed) => {
        try {
          take(share);
          open -= share.analyses.length;
          if (open === 0) resolve();
          else send(one);
        } catch (error) {
          reject(error);
        }
      });
      for (let share = 0; share < AT_ONCE; share += 1) send(one);
    }
  });
  return ended.finally(() => Promise.all(workers.map((one) => one.terminate())));
}
