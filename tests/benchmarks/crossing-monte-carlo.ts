import { collectSamples } from '../../src/core/run/collect-samples.ts';
import { estimateCrossing } from '../../src/core/run/estimate-crossing.ts';
import { TraceBuffer } from '../../src/core/run/TraceBuffer.ts';
import { createNoise, EXAMPLE, heatingAt, trueSoak } from '../core/run/make-heating.ts';
import { crossingBound } from './crossing-bound.ts';
import type { CrossingCase } from './crossing-cases.ts';
import { RIVALS, type Rival, wholeRise } from './crossing-rivals.ts';

export { crossingBound } from './crossing-bound.ts';
export { CROSSING_CASES, type CrossingCase } from './crossing-cases.ts';

export interface Spread {
  readonly biasS: number;
  readonly sdS: number;
  /** Share of 95 % intervals (± 1.96 u) that hold the truth; NaN where there is no uncertainty. */
  readonly coverage: number;
}

export interface CrossingScore extends Spread {
  readonly runs: number;
  readonly failures: number;
  /** Cramér–Rao bound of plateau, start and time constant, noise √(σ²+q²/12), readings within ±10 s that exist. */
  readonly boundS: number;
  readonly meanUncertaintyS: number;
  readonly rivals: Readonly<Record<Rival, Spread>> | null;
  readonly wholeRise: Spread | null;
}

/** Seeded runs of one case: how far the crossing lies from the truth by algebra, against the bound (and, asked for, its rivals). */
export function crossingMonteCarlo(
  one: CrossingCase,
  runs: number,
  seed = 1,
  { withRivals = false, withWholeRise = false } = {},
): CrossingScore {
  const { heating = EXAMPLE, targetC = 176.67, rateHz, noiseC, stepC } = one;
  const { correlation = 0, spikeShare = 0, lostShare = 0, gapS = 0, ripple, afterS = 10, shape } = one;
  const random = createNoise(seed);
  const own = createTally();
  const whole = createTally();
  const rivals = Object.keys(RIVALS).map((name) => ({ name: name as Rival, tally: createTally() }));
  let bounds = 0;
  let uncertainties = 0;
  let failures = 0;
  for (let run = 0; run < runs; run++) {
    const curve = shape?.(random.uniform);
    const truthS = curve?.crossingS ?? trueSoak(heating, targetC);
    const trace = new TraceBuffer(1);
    const phase = random.uniform();
    const ripplePhase = random.uniform() * 2 * Math.PI;
    const gapFromS = truthS - gapS * random.uniform();
    let ar = noiseC * random.normal();
    const used: number[] = [];
    for (let i = 0; (i + phase) / rateHz <= truthS + 10.5; i++) {
      const timeS = (i + phase) / rateHz;
      ar = correlation * ar + Math.sqrt(1 - correlation ** 2) * noiseC * random.normal();
      let valueC = (curve?.at(timeS) ?? heatingAt(heating, timeS)) + ar;
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
    const samples = collectSamples(trace, 0, heating.delayS, truthS + afterS);
    if (withRivals)
      for (const { name, tally } of rivals) tally.add(RIVALS[name](samples, targetC) - truthS, Number.NaN);
    if (withWholeRise) {
      const fit = wholeRise(samples, targetC);
      if (fit !== null) whole.add(fit.timeS - truthS, fit.standardUncertaintyS);
    }
    if (crossing === null) {
      failures++;
      continue;
    }
    uncertainties += crossing.standardUncertaintyS;
    own.add(crossing.timeS - truthS, crossing.standardUncertaintyS);
  }
  return {
    runs,
    failures,
    ...own.spread(),
    boundS: Math.sqrt(bounds / runs),
    meanUncertaintyS: uncertainties / (runs - failures),
    rivals: withRivals
      ? (Object.fromEntries(rivals.map(({ name, tally }) => [name, tally.spread()])) as Record<Rival, Spread>)
      : null,
    wholeRise: withWholeRise ? whole.spread() : null,
  };
}

/** Errors one by one; those that are no number are left out. */
export function createTally(): { add(errorS: number, uncertaintyS: number): void; spread(): Spread } {
  let [count, sum, squares, inside, judged] = [0, 0, 0, 0, 0];
  return {
    add(errorS, uncertaintyS) {
      if (!Number.isFinite(errorS)) return;
      count++;
      sum += errorS;
      squares += errorS * errorS;
      if (!Number.isFinite(uncertaintyS)) return;
      judged++;
      if (Math.abs(errorS) <= 1.96 * uncertaintyS) inside++;
    },
    spread: () => ({
      biasS: sum / count,
      sdS: Math.sqrt(Math.max(0, squares - (sum * sum) / count) / (count - 1)),
      coverage: judged === 0 ? Number.NaN : inside / judged,
    }),
  };
}
