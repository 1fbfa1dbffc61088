import type { Samples } from './collect-samples.ts';
import { median } from './median.ts';
import type { TimeEstimate } from './RunResult.ts';
import { solveSymmetric } from './solve-symmetric.ts';

export interface OnsetEstimate extends TimeEstimate {
  /** Level before the rise, °C. */
  readonly baselineC: number;
  /** False where the record begins inside the rise, so that its start was not seen. */
  readonly baselineSeen: boolean;
}

/**
 * When a rise left its baseline: least squares of T = b for t ≤ d, T = b + s·(t−d) + c·(t−d)² after, over d.
 * Standard uncertainty from the curvature of the sum of squares at its lowest, 2σ²/(SS″), σ at least q/√12, with half
 * a sample interval as a rectangular limit. Readings far off (spikes) are left out in a second pass.
 */
export function estimateOnset(samples: Samples, resolutionC: number): OnsetEstimate | null {
  const count = samples.timesS.length;
  if (count < 2) return null;
  const first = fitHinge(samples, new Float64Array(count).fill(1), resolutionC);
  if (first === null) return startOfRecord(samples);
  const sizes = Array.from({ length: count }, (_, i) =>
    Math.abs(samples.valuesC[i]! - first.curve(samples.timesS[i]!)),
  );
  const scaleC = Math.max(1.4826 * median(sizes)!, resolutionC / Math.sqrt(12), 0.02);
  // Only a lone reading far off is a spike; a stretch of them is a curve that does not fit.
  const weights = Float64Array.from(sizes, (size, i) =>
    size > 5 * scaleC && Math.max(sizes[i - 1] ?? 0, sizes[i + 1] ?? 0) < size / 2 ? 0 : 1,
  );
  const second = fitHinge(samples, weights, resolutionC) ?? first;
  const before = samples.timesS.findIndex((timeS) => timeS >= second.timeS);
  if (before < 2) return startOfRecord(samples);
  return {
    timeS: second.timeS,
    standardUncertaintyS: second.standardUncertaintyS,
    baselineC: second.curve(samples.timesS[0]!),
    baselineSeen: true,
  };
}

/** Nothing before the rise: its start lies at or before the first reading. */
function startOfRecord(samples: Samples): OnsetEstimate {
  const timeS = samples.timesS[0]!;
  const intervalS = median(samples.timesS.slice(1).map((t, i) => t - samples.timesS[i]!)) ?? 1;
  return {
    timeS,
    standardUncertaintyS: intervalS,
    baselineC: samples.valuesC[0]!,
    baselineSeen: false,
  };
}

interface Hinge {
  readonly timeS: number;
  readonly standardUncertaintyS: number;
  readonly curve: (timeS: number) => number;
}

function fitHinge(samples: Samples, weights: Float64Array, resolutionC: number): Hinge | null {
  const { timesS } = samples;
  const count = timesS.length;
  const fromS = timesS[0]!;
  const toS = timesS[count - 1]!;
  const steps = 40;
  const widthS = (toS - fromS) / steps;
  if (!(widthS > 0)) return null;
  let best: { d: number; cost: number } | null = null;
  for (let step = 0; step < steps; step++) {
    const d = fromS + step * widthS;
    const cost = hingeAt(samples, weights, d)?.cost;
    if (cost !== undefined && (best === null || cost < best.cost)) best = { d, cost };
  }
  if (best === null) return null;
  let spanS = widthS;
  for (let round = 0; round < 12; round++) {
    const around: readonly number[] = [best.d - spanS / 2, best.d + spanS / 2];
    for (const d of around) {
      const cost = hingeAt(samples, weights, d)?.cost;
      if (cost !== undefined && cost < best.cost) best = { d, cost };
    }
    spanS /= 2;
  }
  const fit = hingeAt(samples, weights, best.d);
  if (fit === null) return null;
  const intervalS = (toS - fromS) / Math.max(1, count - 1);
  const noiseSquared = Math.max(best.cost / Math.max(1, count - 4), (resolutionC * resolutionC) / 12, 1e-6);
  const h = Math.max(2 * intervalS, 0.2);
  const left = hingeAt(samples, weights, best.d - h)?.cost ?? best.cost;
  const right = hingeAt(samples, weights, best.d + h)?.cost ?? best.cost;
  const curvature = (left + right - 2 * best.cost) / (h * h);
  const fromNoise = curvature > 0 ? (2 * noiseSquared) / curvature : intervalS * intervalS;
  return {
    timeS: best.d,
    standardUncertaintyS: Math.sqrt(fromNoise + (intervalS * intervalS) / 12),
    curve: fit.curve,
  };
}

/** Best level, slope and curvature for a rise from d on; the curve may not turn down inside the samples. */
function hingeAt(
  samples: Samples,
  weights: Float64Array,
  d: number,
): { cost: number; curve: (timeS: number) => number } | null {
  const { timesS, valuesC } = samples;
  const count = timesS.length;
  const baseC = valuesC[0]!;
  let [s0, s1, s2, s3, s4, y0, y1, y2, yy] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < count; i++) {
    const w = weights[i]!;
    const x = timesS[i]! > d ? timesS[i]! - d : 0;
    const y = valuesC[i]! - baseC;
    const wx = w * x;
    const wxx = wx * x;
    s0 += w;
    s1 += wx;
    s2 += wxx;
    s3 += wxx * x;
    s4 += wxx * x * x;
    y0 += w * y;
    y1 += wx * y;
    y2 += wxx * y;
    yy += w * y * y;
  }
  const spanS = timesS[count - 1]! - d;
  const square = [
    [s0, s1, s2],
    [s1, s2, s3],
    [s2, s3, s4],
  ];
  let figures = solveSymmetric(square, [y0, y1, y2])?.solution;
  if (figures === undefined || figures[1]! < 0 || figures[1]! + 2 * figures[2]! * spanS < 0) {
    // Held at its limit: level at the samples' end, c = −s/(2·span); one basis x − x²/(2·span).
    const k = spanS > 0 ? 1 / (2 * spanS) : 0;
    const b1 = s1 - k * s2;
    const held = solveSymmetric(
      [
        [s0, b1],
        [b1, s2 - 2 * k * s3 + k * k * s4],
      ],
      [y0, y1 - k * y2],
    )?.solution;
    figures = held && [held[0]!, held[1]!, -k * held[1]!];
  }
  if (figures === undefined || figures[1]! < 0) return null;
  const [level, s, c] = figures as [number, number, number];
  // Sum of squares at the least-squares solution: Σwy² − bᵀ·x.
  const cost = Math.max(0, yy - level * y0 - s * y1 - c * y2);
  const curve = (timeS: number): number => {
    const x = Math.max(0, timeS - d);
    return baseC + level + s * x + c * x * x;
  };
  return { cost, curve };
}
