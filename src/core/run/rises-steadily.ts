import { collectSamples } from './collect-samples.ts';
import { median } from './median.ts';
import type { RunSurroundings, RunUnderWay } from './RunUnderWay.ts';

/**
 * Whether a rise seen before the mark is the heating itself (a late mark) or only the probe being handled:
 * heating still rises at the mark by at least 15 % of its mean rate since the onset, or has passed the target.
 */
export function risesSteadily(around: RunSurroundings, run: RunUnderWay, markS: number): boolean {
  const onset = run.onset!;
  if (run.provisional !== null) return true;
  const channel = around.bondLineChannels[0]!;
  const samples = collectSamples(around.trace, channel, Math.max(onset.timeS, markS - 5), markS);
  const count = samples.timesS.length;
  const spanS = markS - onset.timeS;
  if (count < 4 || spanS < 2) return true;
  const half = count >>> 1;
  const lateC = median(samples.valuesC.slice(half))!;
  const earlyC = median(samples.valuesC.slice(0, half))!;
  const halfS = (samples.timesS[count - 1]! - samples.timesS[0]!) / 2;
  const rateNow = (lateC - earlyC) / Math.max(halfS, 1e-6);
  const rateMean = (lateC - onset.baselineC) / spanS;
  return rateNow >= 0.15 * rateMean;
}
