import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { analyseTrace } from '../../src/core/session/analyse-trace.ts';
import type { DecodedTrace } from '../../src/core/session/DecodedTrace.ts';
import { decodeTrace } from '../../src/core/session/decode-trace.ts';
import { DEMO_SCENARIO } from '../../src/core/simulator/demo-scenario.ts';
import { variedClosing } from '../../src/core/simulator/good-scenarios.ts';
import { simulateRecording } from '../../src/core/simulator/simulate-recording.ts';
import { createReaderDecoder } from '../../src/core/wire/create-reader-decoder.ts';
import { benchRules } from './bench-data.ts';

const RUNS = 1000;
const DIFFERENT = 50;
const ROLES = ['bond-line', 'upper-platen', 'lower-platen'] as const;

/** Seconds to analyse 1,000 decoded runs of about 1,200 samples of three channels, first time and once more when the engine knows the code. */
export function analysisOf1000Runs(): {
  readonly firstS: number;
  readonly againS: number;
  readonly samples: number;
  readonly channels: number;
  readonly traces: readonly DecodedTrace[];
} {
  const traces = Array.from({ length: DIFFERENT }, (_, seed) => traceOf(seed + 1));
  return {
    firstS: analyse(traces),
    againS: analyse(traces),
    samples: traces.reduce((sum, trace) => sum + trace.timesS.length, 0) / DIFFERENT,
    channels: ROLES.length,
    traces,
  };
}

function analyse(traces: readonly DecodedTrace[]): number {
  const startMs = performance.now();
  let good = 0;
  for (let run = 0; run < RUNS; run += 1) {
    const [result] = analyseTrace(traces[run % DIFFERENT]!, {
      roles: ROLES,
      rules: { ...benchRules, holdS: 40 },
    });
    if (result?.verdict === 'good' && result.soakTimeS !== null) good += 1;
  }
  if (good < RUNS / 2) throw new Error(`only ${good} of ${RUNS} runs were good`);
  return (performance.now() - startMs) / 1000;
}

/** A run of 120 s at 10 Hz: the bond line's first channel and both platens of the simulator's four. */
function traceOf(seed: number): DecodedTrace {
  const { entries } = simulateRecording({
    ...DEMO_SCENARIO,
    seed,
    closings: [{ ...variedClosing(seed, 5, 112) }],
    endS: 120,
    holdS: 40,
    name: `bench-${seed}`,
  });
  const all = decodeTrace(entries, createReaderDecoder());
  const kept = [0, 2, 3];
  const pick = <A extends Float64Array | Uint8Array>(from: A, into: A): A => {
    for (let i = 0; i < all.timesS.length; i += 1)
      for (let at = 0; at < 3; at += 1) into[3 * i + at] = from[all.channels * i + kept[at]!]!;
    return into;
  };
  const length = all.timesS.length * 3;
  return {
    ...all,
    channels: 3,
    temperaturesC: pick(all.temperaturesC, new Float64Array(length)),
    kinds: pick(all.kinds, new Uint8Array(length)),
  };
}

/** A plain script over the same runs: one channel, smoothing filter, first crossing interpolated. Null without pandas and scipy. */
const SCRIPT = `
import json, sys, time
import numpy as np, pandas as pd
from scipy.signal import savgol_filter
frames = [pd.DataFrame(one) for one in json.load(open(sys.argv[1]))]
start = time.perf_counter()
for run in range(${RUNS}):
    frame = frames[run % len(frames)]
    smooth = savgol_filter(frame["c"].to_numpy(), 21, 2)
    at = int(np.argmax(smooth >= 176.667))
    t = frame["t"].to_numpy()
    share = (176.667 - smooth[at - 1]) / (smooth[at] - smooth[at - 1])
    t[at - 1] + share * (t[at] - t[at - 1])
print(time.perf_counter() - start)
`;

export function plainScriptSeconds(traces: readonly DecodedTrace[]): number | null {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  try {
    const data = join(folder, 'runs.json');
    const runs = traces.map(({ timesS, temperaturesC }) => ({
      t: [...timesS],
      c: Array.from(timesS, (_, i) => temperaturesC[3 * i]),
    }));
    writeFileSync(data, JSON.stringify(runs));
    const script = join(folder, 'plain.py');
    writeFileSync(script, SCRIPT);
    const { status, stdout } = spawnSync('python3', [script, data], { encoding: 'utf8' });
    return status === 0 ? Number(stdout.trim()) : null;
  } finally {
    rmSync(folder, { recursive: true });
  }
}
