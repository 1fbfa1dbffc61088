import type { EstimatePoint } from './TimeToTarget.ts';

/** T(t) = plateauC − dropC · exp(−(t − latest)/timeConstantS), fitted for a given time constant. */
export interface RiseFit {
  readonly timeConstantS: number;
  readonly plateauC: number;
  readonly dropC: number;
  /** Sum of squared differences, °C². */
  readonly squares: number;
  /** Variance of plateau and drop per unit variance of the points, and their covariance. */
  readonly spread: { readonly plateau: number; readonly drop: number; readonly both: number };
}

/** Least squares of plateau and drop for one time constant (a straight line in exp(−(t − latest)/τ)); null if undetermined. */
export function fitRise(points: readonly EstimatePoint[], timeConstantS: number): RiseFit | null {
  const latestS = points.at(-1)?.timeS ?? 0;
  const n = points.length;
  const decays = points.map((p) => Math.exp(-(p.timeS - latestS) / timeConstantS));
  const meanE = decays.reduce((sum, e) => sum + e, 0) / n;
  const meanT = points.reduce((sum, p) => sum + p.temperatureC, 0) / n;
  let [see, set, stt] = [0, 0, 0];
  points.forEach((point, i) => {
    const e = (decays[i] ?? 0) - meanE;
    const t = point.temperatureC - meanT;
    see += e * e;
    set += e * t;
    stt += t * t;
  });
  if (!(see > 0)) return null;
  const slope = set / see;
  return {
    timeConstantS,
    plateauC: meanT - slope * meanE,
    dropC: -slope,
    squares: Math.max(0, stt - slope * set),
    spread: { plateau: 1 / n + (meanE * meanE) / see, drop: 1 / see, both: meanE / see },
  };
}
