import { parentPort, workerData } from 'node:worker_threads';
import type { ShareAsked, WorkerSetting } from './analyse-in-threads.ts';
import { analyseShare } from './analyse-share.ts';
import { recordingAnalyser } from './recording-analyser.ts';

/** A further thread: analyses the recordings whose names it is sent, a share at a time. */
const { place, asked } = workerData as WorkerSetting;
const analyser = recordingAnalyser(place, asked);

parentPort?.on('message', async (asked: ShareAsked) => {
  const share = await analyseShare(analyser, asked);
  const buffers = share.analyses.flatMap((analysis) =>
    analysis === null || analysis === 'failed' || analysis.traceToKeep === null
      ? []
      : [analysis.traceToKeep.buffer as ArrayBuffer],
  );
  parentPort?.postMessage(share, buffers);
});
