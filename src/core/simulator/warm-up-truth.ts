import { fullPowerTruth } from './warm-up-platen.ts';
import type { WarmUpScenario } from './warm-up-scenarios.ts';
import { simulateWarmUp, WARM_UP_STEP_S } from './warm-up-simulation.ts';

/** ±5 °F, the band that the truths in the head are stated for. */
const BAND_C = 5 / 1.8;
/** Not more than 2 °F below for 60 s: recovered. */
const RECOVERED_C = 2 / 1.8;
const RECOVERED_FOR_S = 60;

/**
 * What is true of a simulated warm-up, for the head of its recording: parameters as set, and figures read off the
 * noise-free course of each platen's probe, twenty times a second. Times in s from power-on.
 */
export function warmUpTruth(scenario: WarmUpScenario): Readonly<Record<string, string>> {
  const times: number[] = [];
  const upper: number[] = [];
  const lower: number[] = [];
  for (const { timeS, upperProbeC, lowerProbeC } of simulateWarmUp(scenario)) {
    times.push(timeS);
    upper.push(upperProbeC);
    lower.push(lowerProbeC);
  }
  return {
    'truth-power-on-s': figure(scenario.powerOnS),
    'truth-part-in-s': figure(scenario.partInS - scenario.powerOnS),
    ...platenTruth('upper', scenario, times, upper),
    ...platenTruth('lower', scenario, times, lower),
  };
}

function platenTruth(
  side: 'upper' | 'lower',
  scenario: WarmUpScenario,
  times: readonly number[],
  probe: readonly number[],
): Record<string, string> {
  const setup = scenario[side];
  const { timeConstantS, delayS } = fullPowerTruth(setup);
  const partIn = times.findIndex((time) => time >= scenario.partInS);
  // The last whole heater cycles of the ten minutes before the part.
  const cycles = Math.floor(600 / setup.cycleS) * setup.cycleS;
  const steady = probe.slice(
    times.findIndex((time) => time >= scenario.partInS - cycles),
    partIn,
  );
  const levelC = steady.reduce((sum, value) => sum + value, 0) / steady.length;
  const lastOutside = (aroundC: number) => {
    let last = -1;
    for (let i = 0; i < partIn; i++) if (Math.abs(probe[i]! - aroundC) > BAND_C) last = i;
    return last === partIn - 1 ? null : times[last + 1]! - scenario.powerOnS;
  };
  const lowestC = Math.min(...probe.slice(partIn));
  const below = (i: number) => levelC - probe[i]! > RECOVERED_C;
  let away = partIn;
  while (!below(away)) away++;
  for (let i = away; i < probe.length && times[i]! - times[away]! < RECOVERED_FOR_S; i++)
    if (below(i)) away = i;
  const peakC = Math.max(...probe.slice(0, partIn));
  const stays = lastOutside(setup.setPointC);
  return {
    [`truth-${side}-time-constant-s`]: figure(timeConstantS),
    [`truth-${side}-delay-s`]: figure(delayS),
    [`truth-${side}-level-c`]: figure(levelC),
    [`truth-${side}-settling-s`]: figure(lastOutside(levelC) ?? Number.NaN),
    [`truth-${side}-stays-in-band-s`]: stays === null ? 'never' : figure(stays),
    [`truth-${side}-overshoot-c`]: figure(peakC - levelC),
    [`truth-${side}-ripple-amplitude-c`]: figure(meanHalfHeight(steady, setup.cycleS)),
    [`truth-${side}-ripple-period-s`]: figure(setup.cycleS),
    [`truth-${side}-dip-c`]: figure(levelC - lowestC),
    [`truth-${side}-recovery-s`]: figure(times[Math.min(away + 1, times.length - 1)]! - scenario.partInS),
  };
}

/** Half of highest less lowest in each heater cycle, averaged over the cycles. */
function meanHalfHeight(steady: readonly number[], cycleS: number): number {
  const length = Math.round(cycleS / WARM_UP_STEP_S);
  const cycles = Math.floor(steady.length / length);
  let sum = 0;
  for (let cycle = 0; cycle < cycles; cycle++) {
    const part = steady.slice(cycle * length, (cycle + 1) * length);
    sum += (Math.max(...part) - Math.min(...part)) / 2;
  }
  return sum / cycles;
}

function figure(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
