import type { Samples } from './collect-samples.ts';

export interface FirstOrderFit {
  /** Temperature that the curve tends to, °C. */
  readonly plateauC: number;
  readonly timeConstantS: number;
  /** When the curve leaves `startC`, s. */
  readonly departsS: number;
  /** Root mean square of what is left over, °C. */
  readonly rmsC: number;
}

/**
 * Heating curve of first order, T = Tp − A·exp(−t/τ): linear least squares in Tp and A for each τ, τ by search over a
 * geometric grid (1 s to 2000 s) and then by golden section. At most 150 readings are used, evenly picked.
 * @returns null with fewer than eight readings or when the curve does not rise.
 */
export function fitFirstOrder(samples: Samples, startC: number): FirstOrderFit | null {
  const stride = Math.max(1, Math.ceil(samples.timesS.length / 150));
  const times: number[] = [];
  const values: number[] = [];
  for (let i = 0; i < samples.timesS.length; i += stride) {
    times.push(samples.timesS[i]! - samples.timesS[0]!);
    values.push(samples.valuesC[i]! - startC);
  }
  if (times.length < 8) return null;
  let best = { logTau: 0, cost: Number.POSITIVE_INFINITY };
  const steps = 24;
  const widest = Math.log(2000);
  for (let step = 0; step <= steps; step++) {
    const logTau = (widest * step) / steps;
    const cost = atTimeConstant(times, values, Math.exp(logTau))?.cost ?? Number.POSITIVE_INFINITY;
    if (cost < best.cost) best = { logTau, cost };
  }
  let span = widest / steps;
  for (let round = 0; round < 14; round++) {
    for (const logTau of [best.logTau - span / 2, best.logTau + span / 2]) {
      const cost = atTimeConstant(times, values, Math.exp(logTau))?.cost ?? Number.POSITIVE_INFINITY;
      if (cost < best.cost) best = { logTau, cost };
    }
    span /= 2;
  }
  const timeConstantS = Math.exp(best.logTau);
  const fit = atTimeConstant(times, values, timeConstantS);
  if (fit === null || !(fit.amplitudeC > 0) || fit.plateauC <= 0) return null;
  const departsS = samples.timesS[0]! - timeConstantS * Math.log(fit.plateauC / fit.amplitudeC);
  if (!Number.isFinite(departsS)) return null;
  return {
    plateauC: fit.plateauC + startC,
    timeConstantS,
    departsS,
    rmsC: Math.sqrt(fit.cost / times.length),
  };
}

function atTimeConstant(
  times: readonly number[],
  values: readonly number[],
  timeConstantS: number,
): { plateauC: number; amplitudeC: number; cost: number } | null {
  const count = times.length;
  let e1 = 0;
  let e2 = 0;
  let v1 = 0;
  let v2 = 0;
  let ev = 0;
  for (let i = 0; i < count; i++) {
    const e = Math.exp(-times[i]! / timeConstantS);
    const v = values[i]!;
    e1 += e;
    e2 += e * e;
    v1 += v;
    v2 += v * v;
    ev += e * v;
  }
  const see = e2 - (e1 * e1) / count;
  if (!(see > 1e-12 * e2)) return null;
  const slope = (ev - (e1 * v1) / count) / see;
  const cost = Math.max(0, v2 - (v1 * v1) / count - slope * slope * see);
  return { plateauC: (v1 - slope * e1) / count, amplitudeC: -slope, cost };
}
