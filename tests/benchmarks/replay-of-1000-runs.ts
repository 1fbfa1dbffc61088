import { analyseEntries } from '../../src/core/session/analyse-entries.ts';
import { SHIPPED_SCENARIOS } from '../../src/core/simulator/shipped-scenarios.ts';
import { simulateRecording } from '../../src/core/simulator/simulate-recording.ts';
import { createReaderDecoder } from '../../src/core/wire/create-reader-decoder.ts';
import { benchRules } from './bench-data.ts';

/** Seconds to replay 1,000 runs of about 1,950 lines from their lines: decoding, detection, final figures. */
export function replaySecondsPer1000Runs(): { readonly seconds: number; readonly linesPerRun: number } {
  const recording = simulateRecording(SHIPPED_SCENARIOS[0]!.scenario);
  const runs = 1000;
  const startMs = performance.now();
  let soakS = 0;
  for (let i = 0; i < runs; i += 1) {
    const { results } = analyseEntries(recording.entries, {
      decoder: createReaderDecoder(),
      roles: recording.head.roles,
      rules: benchRules,
    });
    soakS += results[0]?.soakTimeS ?? Number.NaN;
  }
  if (!(soakS > 0)) throw new Error('replay found no soak time');
  return { seconds: (performance.now() - startMs) / 1000, linesPerRun: recording.entries.length };
}
