import { createConductionStack } from '../../src/core/simulator/create-conduction-stack.ts';
import { WB_212 } from '../../src/core/simulator/demo-assemblies.ts';
import { EXAMPLE, heatingAt } from '../core/run/make-heating.ts';

/** Temperature at a time after closing, and when it passes the target. */
export interface TrueCurve {
  at(timeS: number): number;
  readonly crossingS: number;
}

export const TARGET_C = 176.67;
const { startC, platenC, timeConstantS: tau } = EXAMPLE;

/** First-order heating seen through a probe of its own time constant: sum of two exponentials. */
export function lagged(lagS: number): TrueCurve {
  const at = (t: number): number =>
    platenC - ((platenC - startC) * (tau * Math.exp(-t / tau) - lagS * Math.exp(-t / lagS))) / (tau - lagS);
  return solved(at);
}

/** Platens 10 °C low at closing, recovering with 15 s; closed form of dT/dt = (Tp(t) − T)/τ. */
export function recovering(lowC = 10, recoveryS = 15): TrueCurve {
  const c = (-lowC * recoveryS) / (recoveryS - tau);
  return solved((t) => platenC + c * Math.exp(-t / recoveryS) + (startC - platenC - c) * Math.exp(-t / tau));
}

/** Platens cycling by ±1.5 °C every 60 s from a random phase. */
export function cycling(uniform: () => number, swingC = 1.5, periodS = 60): TrueCurve {
  const omega = (2 * Math.PI) / periodS;
  const phase = 2 * Math.PI * uniform();
  const size = swingC / Math.hypot(1, omega * tau);
  const behind = Math.atan(omega * tau);
  const offset = startC - platenC - size * Math.sin(phase - behind);
  return solved((t) => platenC + size * Math.sin(omega * t + phase - behind) + offset * Math.exp(-t / tau));
}

/** Heat conduction through carrier and ring between two platens at 232.2 °C; bond line between the layers. */
export function conducted(): TrueCurve {
  const stack = createConductionStack([WB_212.carrier, WB_212.ring], [WB_212.bondFilmM2KPerW], startC);
  const stepS = 0.05;
  const levels: number[] = [startC];
  for (let i = 0; i < 150 / stepS; i += 1) {
    const face = { temperatureC: platenC, resistanceM2KPerW: 1.1e-3 };
    stack.step(stepS, face, face);
    levels.push(stack.betweenLayersC(0));
  }
  return solved((t) => {
    const place = Math.min(levels.length - 2, t / stepS);
    const low = Math.floor(place);
    return levels[low]! + (place - low) * (levels[low + 1]! - levels[low]!);
  });
}

export function firstOrder(): TrueCurve {
  return solved((t) => heatingAt(EXAMPLE, t));
}

function solved(at: (timeS: number) => number): TrueCurve {
  let [low, high] = [1, 149];
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2;
    if (at(middle) < TARGET_C) low = middle;
    else high = middle;
  }
  return { at, crossingS: high };
}
