import { estimateCrossing } from '../../src/core/run/estimate-crossing.ts';
import { TraceBuffer } from '../../src/core/run/TraceBuffer.ts';
import { createNoise, EXAMPLE, type Heating, heatingAt, trueSoak } from '../core/run/make-heating.ts';

export interface CrossingCase {
  readonly name: string;
  readonly heating?: Heating;
  readonly targetC?: number;
  readonly rateHz: number;
  readonly noiseC: number;
  readonly stepC: number;
  /** AR(1) coefficient of the noise; its standard deviation stays `noiseC`. */
  readonly correlation?: number;
  readonly spikeShare?: number;
  readonly lostShare?: number;
  /** Length of a gap placed at random over the crossing, s. */
  readonly gapS?: number;
  readonly ripple?: { readonly amplitudeC: number; readonly frequencyHz: number };
  /** Readings after the crossing: 10 for the final figure, 1 for the provisional one. */
  readonly afterS?: number;
}

export interface CrossingScore {
  readonly runs: number;
  readonly failures: number;
  readonly biasS: number;
  readonly sdS: number;
  /** Cramér–Rao bound of plateau, start and time constant, noise √(σ²+q²/12), readings within ±10 s that exist. */
  readonly boundS: number;
  /** Share of 95 % intervals (± 1.96 u) that hold the truth. */
  readonly coverage: number;
  readonly meanUncertaintyS: number;
}

/** Seeded runs of one case: how far the crossing lies from the truth by algebra, against the bound. */
export function crossingMonteCarlo(one: CrossingCase, runs: number, seed = 1): CrossingScore {
  const { heating = EXAMPLE, targetC = 176.67, rateHz, noiseC, stepC } = one;
  const { correlation = 0, spikeShare = 0, lostShare = 0, gapS = 0, ripple, afterS = 10 } = one;
  const random = createNoise(seed);
  const truthS = trueSoak(heating, targetC);
  const errors: number[] = [];
  let inside = 0;
  let bounds = 0;
  let uncertainties = 0;
  let failures = 0;
  for (let run = 0; run < runs; run++) {
    const trace = new TraceBuffer(1);
    const phase = random.uniform();
    const ripplePhase = random.uniform() * 2 * Math.PI;
    const gapFromS = truthS - gapS * random.uniform();
    let ar = noiseC * random.normal();
    const used: number[] = [];
    for (let i = 0; (i + phase) / rateHz <= truthS + 10.5; i++) {
      const timeS = (i + phase) / rateHz;
      ar = correlation * ar + Math.sqrt(1 - correlation ** 2) * noiseC * random.normal();
      let valueC = heatingAt(heating, timeS) + ar;
      if (ripple)
        valueC += ripple.amplitudeC * Math.sin(2 * Math.PI * ripple.frequencyHz * timeS + ripplePhase);
      if (random.uniform() < spikeShare) valueC += random.uniform() < 0.5 ? 30 : -30;
      if (random.uniform() < lostShare) continue;
      if (gapS > 0 && timeS > gapFromS && timeS < gapFromS + gapS) continue;
      if (stepC > 0) valueC = Math.round(valueC / stepC) * stepC;
      trace.append({ timeS, arrivedUs: 0, values: [{ kind: 'temperature', temperatureC: valueC }] });
      if (Math.abs(timeS - truthS) <= 10 && timeS <= truthS + afterS) used.push(timeS);
    }
    bounds += crossingBound(heating, targetC, used, Math.hypot(noiseC, stepC / Math.sqrt(12))) ** 2;
    const crossing = estimateCrossing(trace, 0, targetC, {
      guessS: truthS + 0.1 * random.normal(),
      riseFromS: heating.delayS,
      untilS: truthS + afterS,
      resolutionC: stepC,
    });
    if (crossing === null) {
      failures++;
      continue;
    }
    const errorS = crossing.timeS - truthS;
    errors.push(errorS);
    uncertainties += crossing.standardUncertaintyS;
    if (Math.abs(errorS) <= 1.96 * crossing.standardUncertaintyS) inside++;
  }
  const count = errors.length;
  const biasS = errors.reduce((a, b) => a + b, 0) / count;
  return {
    runs,
    failures,
    biasS,
    sdS: Math.sqrt(errors.reduce((sum, error) => sum + (error - biasS) ** 2, 0) / (count - 1)),
    boundS: Math.sqrt(bounds / runs),
    coverage: inside / count,
    meanUncertaintyS: uncertainties / count,
  };
}

/** Cramér–Rao bound of the crossing time for plateau, start and τ free, white noise; 3×3 Fisher matrix by Cramer's rule. */
export function crossingBound(
  heating: Heating,
  targetC: number,
  timesS: readonly number[],
  noiseC: number,
): number {
  const { platenC, startC, timeConstantS: tau, delayS } = heating;
  const f = [0, 0, 0, 0, 0, 0];
  for (const timeS of timesS) {
    const e = Math.exp(-(timeS - delayS) / tau);
    const a = 1 - e;
    const b = e;
    const c = (-(platenC - startC) * e * (timeS - delayS)) / tau ** 2;
    f[0]! += a * a;
    f[1]! += a * b;
    f[2]! += a * c;
    f[3]! += b * b;
    f[4]! += b * c;
    f[5]! += c * c;
  }
  const [aa, ab, ac, bb, bc, cc] = f as [number, number, number, number, number, number];
  const det = aa * (bb * cc - bc * bc) - ab * (ab * cc - bc * ac) + ac * (ab * bc - bb * ac);
  const inv = [
    [(bb * cc - bc * bc) / det, (ac * bc - ab * cc) / det, (ab * bc - ac * bb) / det],
    [(ac * bc - ab * cc) / det, (aa * cc - ac * ac) / det, (ab * ac - aa * bc) / det],
    [(ab * bc - ac * bb) / det, (ab * ac - aa * bc) / det, (aa * bb - ab * ab) / det],
  ];
  const crossS = trueSoak(heating, targetC) - delayS;
  const e = Math.exp(-crossS / tau);
  const slope = ((platenC - startC) * e) / tau;
  const g = [-(1 - e) / slope, -e / slope, ((platenC - startC) * e * crossS) / tau ** 2 / slope];
  let variance = 0;
  for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) variance += g[i]! * inv[i]![j]! * g[j]!;
  return noiseC * Math.sqrt(variance);
}

/** The cases of the table. */
export const CROSSING_CASES: readonly CrossingCase[] = [
  { name: '10 Hz, σ 0.25 °C', rateHz: 10, noiseC: 0.25, stepC: 0.25 },
  { name: '10 Hz, σ 1.0 °C', rateHz: 10, noiseC: 1, stepC: 0.25 },
  { name: '2 Hz, σ 0.25 °C', rateHz: 2, noiseC: 0.25, stepC: 0.25 },
  { name: '1 Hz, σ 0.25 °C', rateHz: 1, noiseC: 0.25, stepC: 0.25 },
  {
    name: '10 Hz, σ 0.25 °C, 1 % spikes ±30 °C, 2 % lost',
    rateHz: 10,
    noiseC: 0.25,
    stepC: 0.25,
    spikeShare: 0.01,
    lostShare: 0.02,
  },
  {
    name: '10 Hz, σ 1.0 °C, 1 % spikes ±30 °C, 2 % lost',
    rateHz: 10,
    noiseC: 1,
    stepC: 0.25,
    spikeShare: 0.01,
    lostShare: 0.02,
  },
  { name: '10 Hz, σ 0.25 °C, 3 s gap', rateHz: 10, noiseC: 0.25, stepC: 0.25, gapS: 3 },
  { name: '10 Hz, σ 0.5 °C, AR(1) 0.5', rateHz: 10, noiseC: 0.5, stepC: 0.25, correlation: 0.5 },
  { name: '10 Hz, σ 0.5 °C, AR(1) 0.8', rateHz: 10, noiseC: 0.5, stepC: 0.25, correlation: 0.8 },
  { name: '10 Hz, σ 0.02 °C (under q/4)', rateHz: 10, noiseC: 0.02, stepC: 0.25 },
  { name: '10 Hz, σ 0 °C', rateHz: 10, noiseC: 0, stepC: 0.25 },
  { name: '100 Hz, σ 0.05 °C', rateHz: 100, noiseC: 0.05, stepC: 0.25 },
  {
    name: '10 Hz, σ 0.25 °C, ripple 0.5 °C at 0.7 Hz',
    rateHz: 10,
    noiseC: 0.25,
    stepC: 0.25,
    ripple: { amplitudeC: 0.5, frequencyHz: 0.7 },
  },
  {
    name: '10 Hz, σ 0.25 °C, ripple 0.5 °C at 0.13 Hz',
    rateHz: 10,
    noiseC: 0.25,
    stepC: 0.25,
    ripple: { amplitudeC: 0.5, frequencyHz: 0.13 },
  },
  { name: 'provisional, 10 Hz, σ 0.25 °C', rateHz: 10, noiseC: 0.25, stepC: 0.25, afterS: 1 },
  { name: 'provisional, 10 Hz, σ 1.0 °C', rateHz: 10, noiseC: 1, stepC: 0.25, afterS: 1 },
  { name: 'every 5 s, σ 0.25 °C', rateHz: 0.2, noiseC: 0.25, stepC: 0.1 },
  { name: 'every 10 s, σ 0.25 °C', rateHz: 0.1, noiseC: 0.25, stepC: 0.1 },
  {
    name: '2 Hz, τ 5 s',
    heating: { startC: 24, platenC: 232.2, timeConstantS: 5, delayS: 1 },
    rateHz: 2,
    noiseC: 0.25,
    stepC: 0.1,
  },
];
