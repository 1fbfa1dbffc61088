import type { Samples } from './collect-samples.ts';
import { type Hinge, hingeLevelC, hingeSearch } from './hinge.ts';
import { median, medianInPlace } from './median.ts';
import type { TimeEstimate } from './RunResult.ts';

export interface OnsetEstimate extends TimeEstimate {
  /** Level before the rise, °C. */
  readonly baselineC: number;
  /** False where the record begins inside the rise, so that its start was not seen. */
  readonly baselineSeen: boolean;
}

/** The kink is looked for at so many places over the record, then closer about the best one. */
const PLACES = 40;
const HALVINGS = 12;

/**
 * When a rise left its baseline: least squares of T = b for t ≤ d, T = b + s·(t−d) + c·(t−d)² after, over d.
 * Standard uncertainty from the curvature of the sum of squares at its lowest, 2σ²/(SS″), σ at least q/√12, with half
 * a sample interval as a rectangular limit. Readings far off (spikes) are left out in a second pass.
 */
export function estimateOnset(samples: Samples, resolutionC: number): OnsetEstimate | null {
  const { timesS } = samples;
  if (timesS.length < 2) return null;
  const first = fitHinge(samples, null, resolutionC);
  if (first === null) return startOfRecord(samples);
  const weights = spikeWeights(samples, first.hinge, resolutionC);
  const best = (weights === null ? null : fitHinge(samples, weights, resolutionC)) ?? first;
  if (!(timesS[1]! < best.hinge.atS)) return startOfRecord(samples);
  return {
    timeS: best.hinge.atS,
    standardUncertaintyS: best.standardUncertaintyS,
    baselineC: best.hinge.levelC,
    baselineSeen: true,
  };
}

/** Nothing before the rise: its start lies at or before the first reading. */
function startOfRecord({ timesS, valuesC }: Samples): OnsetEstimate {
  const intervalS = median(timesS.slice(1).map((t, i) => t - timesS[i]!)) ?? 1;
  return {
    timeS: timesS[0]!,
    standardUncertaintyS: intervalS,
    baselineC: valuesC[0]!,
    baselineSeen: false,
  };
}

/** Weight 0 for spikes, 1 for the rest; null where there are none. */
function spikeWeights({ timesS, valuesC }: Samples, hinge: Hinge, resolutionC: number): Float64Array | null {
  const count = timesS.length;
  const sizes = new Float64Array(count);
  for (let i = 0; i < count; i++) sizes[i] = Math.abs(valuesC[i]! - hingeLevelC(hinge, timesS[i]!));
  const scaleC = Math.max(1.4826 * medianInPlace(sizes.slice()), resolutionC / Math.sqrt(12), 0.02);
  let weights: Float64Array | null = null;
  for (let i = 0; i < count; i++) {
    const size = sizes[i]!;
    if (size <= 5 * scaleC) continue;
    // Only a lone reading far off is a spike; a stretch of them is a curve that does not fit.
    if (Math.max(sizes[i - 1] ?? 0, sizes[i + 1] ?? 0) >= size / 2) continue;
    weights ??= new Float64Array(count).fill(1);
    weights[i] = 0;
  }
  return weights;
}

function fitHinge(
  samples: Samples,
  weights: Float64Array | null,
  resolutionC: number,
): { readonly hinge: Hinge; readonly standardUncertaintyS: number } | null {
  const { timesS } = samples;
  const count = timesS.length;
  const fromS = timesS[0]!;
  const toS = timesS[count - 1]!;
  const widthS = (toS - fromS) / PLACES;
  if (!(widthS > 0)) return null;
  const hingeAt = hingeSearch(samples, weights);
  let best: Hinge | null = null;
  for (let place = 0; place < PLACES; place++) best = better(best, hingeAt(fromS + place * widthS));
  if (best === null) return null;
  let halfS = widthS / 2;
  for (let round = 0; round < HALVINGS; round++) {
    const atS: number = best.atS;
    best = better(better(best, hingeAt(atS - halfS))!, hingeAt(atS + halfS))!;
    halfS /= 2;
  }
  const intervalS = (toS - fromS) / Math.max(1, count - 1);
  const noiseSquared = Math.max(best.cost / Math.max(1, count - 4), (resolutionC * resolutionC) / 12, 1e-6);
  const h = Math.max(2 * intervalS, 0.2);
  const left = hingeAt(best.atS - h)?.cost ?? best.cost;
  const right = hingeAt(best.atS + h)?.cost ?? best.cost;
  const curvature = (left + right - 2 * best.cost) / (h * h);
  const fromNoise = curvature > 0 ? (2 * noiseSquared) / curvature : intervalS * intervalS;
  return { hinge: best, standardUncertaintyS: Math.sqrt(fromNoise + (intervalS * intervalS) / 12) };
}

function better(best: Hinge | null, other: Hinge | null): Hinge | null {
  return other !== null && (best === null || other.cost < best.cost) ? other : best;
}
