import { parentPort, workerData } from 'node:worker_threads';
import type { ShareAnalysed, ShareAsked, WorkerSetting } from './analyse-in-threads.ts';
import { recordingAnalyser } from './recording-analyser.ts';

/** A thread that analyses the recordings whose names it is sent, a share at a time. Errors keep their kind only where they arise: the program looks at such a recording itself. */
const { place, asked } = workerData as WorkerSetting;
const analyser = recordingAnalyser(place, asked);
const port = parentPort;

port?.on('message', async ({ from, names }: ShareAsked) => {
  const analyses: ShareAnalysed['analyses'][number][] = [];
  const buffers: ArrayBuffer[] = [];
  for (const name of names) {
    const analysis = await analyser.analyse(name).catch((): 'failed' => 'failed');
    analyses.push(analysis);
    if (analysis === null || analysis === 'failed' || analysis.traceToKeep === null) continue;
    buffers.push(analysis.traceToKeep.buffer as ArrayBuffer);
  }
  port.postMessage({ from, analyses } satisfies ShareAnalysed, buffers);
});
