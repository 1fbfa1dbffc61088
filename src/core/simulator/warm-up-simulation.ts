import { createRandom } from './create-random.ts';
import { createWarmUpPlaten } from './warm-up-platen.ts';
import type { WarmUpScenario } from './warm-up-scenarios.ts';

/** Step of the physics, s. */
export const WARM_UP_STEP_S = 0.05;
/** A cold steel part between the platens: heat capacity and conductance to each platen. Invented. */
const PART_J_PER_K = 900;
const PART_W_PER_K = 24;

/** The probes' own temperatures, before noise, once a step. */
export interface WarmUpMoment {
  readonly timeS: number;
  readonly upperProbeC: number;
  readonly lowerProbeC: number;
}

/** The whole warm-up without noise, from the first reading on. */
export function* simulateWarmUp(scenario: WarmUpScenario): Generator<WarmUpMoment> {
  const random = createRandom(scenario.seed);
  const upper = createWarmUpPlaten(scenario.upper, scenario.ambientC, random.uniform());
  const lower = createWarmUpPlaten(scenario.lower, scenario.ambientC, random.uniform());
  let partC = scenario.ambientC;
  for (let step = 0; ; step++) {
    const timeS = step * WARM_UP_STEP_S;
    if (timeS > scenario.endS) return;
    yield { timeS, upperProbeC: upper.probeC, lowerProbeC: lower.probeC };
    const closed = timeS >= scenario.partInS && timeS < scenario.partOutS;
    const upperW = closed ? PART_W_PER_K * (upper.plateC - partC) : 0;
    const lowerW = closed ? PART_W_PER_K * (lower.plateC - partC) : 0;
    partC += ((upperW + lowerW) * WARM_UP_STEP_S) / PART_J_PER_K;
    upper.step(WARM_UP_STEP_S, upperW, timeS >= scenario.powerOnS);
    lower.step(WARM_UP_STEP_S, lowerW, timeS >= scenario.powerOnS);
  }
}
