import { createRandom } from '../../../src/core/simulator/create-random.ts';
import { analyseWarmUp } from '../../../src/core/warm-up/analyse-warm-up.ts';
import { DEFAULT_WARM_UP_RULES } from '../../../src/core/warm-up/default-warm-up-rules.ts';
import type { PlatenRecord } from '../../../src/core/warm-up/gather-platens.ts';
import type { WarmUpRules } from '../../../src/core/warm-up/WarmUp.ts';

/** Unit step response of ωn² / (s² + 2ζωn·s + ωn²), closed form for each kind of damping. */
export function secondOrder(zeta: number, omega: number, timeS: number): number {
  if (timeS <= 0) return 0;
  if (zeta < 1) {
    const damped = omega * Math.sqrt(1 - zeta ** 2);
    const envelope = Math.exp(-zeta * omega * timeS);
    return 1 - envelope * (Math.cos(damped * timeS) + ((zeta * omega) / damped) * Math.sin(damped * timeS));
  }
  if (zeta === 1) return 1 - (1 + omega * timeS) * Math.exp(-omega * timeS);
  const root = Math.sqrt(zeta ** 2 - 1);
  const [slow, fast] = [omega * (zeta - root), omega * (zeta + root)];
  return 1 - (fast * Math.exp(-slow * timeS) - slow * Math.exp(-fast * timeS)) / (fast - slow);
}

/** Last root of |y(t) − 1| = band by scanning finely for the last change of side, then bisection. */
export function settlingRoot(zeta: number, omega: number, band: number): number {
  const outside = (timeS: number) => Math.abs(secondOrder(zeta, omega, timeS) - 1) - band;
  const step = 1e-3 / omega;
  let timeS = 60 / omega;
  while (outside(timeS) < 0) timeS -= step;
  return bisect(outside, timeS, timeS + step);
}

/** First time at which the response reaches a level. */
export function reaches(zeta: number, omega: number, level: number): number {
  const above = (timeS: number) => secondOrder(zeta, omega, timeS) - level;
  const step = 1e-3 / omega;
  let timeS = 0;
  while (above(timeS) < 0) timeS += step;
  return bisect(above, timeS - step, timeS);
}

export function bisect(of: (x: number) => number, low: number, high: number): number {
  const side = Math.sign(of(low));
  for (let round = 0; round < 80; round++) {
    const middle = (low + high) / 2;
    if (Math.sign(of(middle)) === side) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A record of one upper platen that follows `curve`, s → °C, with white noise. */
export function recordOf(
  curve: (timeS: number) => number,
  {
    endS,
    intervalS,
    noiseC = 0,
    seed = 1,
  }: { endS: number; intervalS: number; noiseC?: number; seed?: number },
): PlatenRecord {
  const random = createRandom(seed);
  const count = Math.floor(endS / intervalS) + 1;
  const timesS = Array.from({ length: count }, (_, i) => i * intervalS);
  return {
    channels: [
      {
        channel: 1,
        role: 'upper-platen',
        timesS,
        valuesC: timesS.map((timeS) => curve(timeS) + noiseC * random.normal()),
        faults: 0,
      },
    ],
    closings: [],
    heatersOnS: [],
    gaps: [],
    endedS: timesS[count - 1]!,
    counts: {
      lines: count,
      readings: count,
      garbage: 0,
      badChecksum: 0,
      malformed: 0,
      overLong: 0,
      cutOff: 0,
      startUnknown: 0,
      duplicates: 0,
      lostSamples: 0,
      gaps: 0,
      restarts: 0,
      unplugs: 0,
    },
    recognised: null,
    refusal: null,
  };
}

export function rulesWith(setPointC: number, change: Partial<WarmUpRules> = {}): WarmUpRules {
  return { ...DEFAULT_WARM_UP_RULES, setPointC: { upper: setPointC, lower: setPointC }, ...change };
}

export function onlyChannel(record: PlatenRecord, rules: WarmUpRules, poweredAtS: number | null = null) {
  const warmUp = analyseWarmUp(record, rules, poweredAtS);
  return { warmUp, channel: warmUp.channels[0]! };
}
