import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { AskedRules, RecordingAnalysis, RecordingPlace } from './RecordingAnalysis.ts';

export interface WorkerSetting {
  readonly place: RecordingPlace;
  readonly asked: AskedRules;
}

/** Recordings a thread is sent at a time: small enough that all threads end together. */
const A_SHARE = 8;
/** Two shares wait at each further thread, so that none stands idle while its answer travels. */
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
 * Analyses recordings in this thread, by `analyse`, and in further ones; `take` hears each share as it comes, in any
 * order. Rejects where a thread itself dies.
 */
export async function analyseInThreads(
  work: {
    readonly worker: URL;
    readonly furtherThreads: number;
    readonly setting: WorkerSetting;
    readonly names: readonly string[];
  },
  analyse: (share: ShareAsked) => Promise<ShareAnalysed>,
  take: (share: ShareAnalysed) => void,
): Promise<void> {
  const { names, setting } = work;
  let given = 0;
  const nextShare = (): ShareAsked | null => {
    if (given >= names.length) return null;
    const share = { from: given, names: names.slice(given, given + A_SHARE) };
    given += A_SHARE;
    return share;
  };
  const workers = Array.from(
    { length: work.furtherThreads },
    () => new Worker(work.worker, { workerData: setting }),
  );
  try {
    await Promise.all([
      ...workers.map((worker) => keepBusy(worker, nextShare, take)),
      workHere(nextShare, analyse, take),
    ]);
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

async function workHere(
  nextShare: () => ShareAsked | null,
  analyse: (share: ShareAsked) => Promise<ShareAnalysed>,
  take: (share: ShareAnalysed) => void,
): Promise<void> {
  for (let share = nextShare(); share !== null; share = nextShare()) {
    take(await analyse(share));
    // The others' answers are heard in between.
    await setImmediate();
  }
}

function keepBusy(
  worker: Worker,
  nextShare: () => ShareAsked | null,
  take: (share: ShareAnalysed) => void,
): Promise<void> {
  return new Promise((resolve, reject) => {
    let open = 0;
    const send = (): void => {
      const share = nextShare();
      if (share === null) return;
      open += 1;
      worker.postMessage(share);
    };
    worker.on('error', reject);
    worker.on('message', (share: ShareAnalysed) => {
      try {
        take(share);
      } catch (error) {
        reject(error);
      }
      open -= 1;
      send();
      if (open === 0) resolve();
    });
    for (let share = 0; share < AT_ONCE; share += 1) send();
    if (open === 0) resolve();
  });
}
