import type { ChannelAtRest, ReadyFacts, ReadyFinding } from './ReadyCheck.ts';

/** A platen is at its set point within this, °C of difference (9 °F): as the run's own check. Common practice, no source. */
export const PLATEN_BAND_C = 5;
/** Steady: it drifts by less than this over the stretch, °C. Wider than an on-off controller's ripple. Judgement. */
const STEADY_C = 3;
const SHORTEST_S = 10;

/** Measured platens stand at their set point and do not move. Without a set point: they do not move. */
export function checkPlatens({ channels, rules }: ReadyFacts): ReadyFinding {
  const platens = channels.filter((one) => one.role === 'upper-platen' || one.role === 'lower-platen');
  if (platens.length === 0) return { state: 'not-checked', code: 'platens-not-measured', facts: {} };
  if (platens.some((one) => one.meanC === null || one.driftCPerS === null || one.overS < SHORTEST_S))
    return { state: 'wait', code: 'platens-awaited', facts: {} };
  const off = platens.flatMap((one) => {
    const setPointC = setPointOf(one, rules);
    const temperatureC = one.meanC ?? 0;
    return setPointC === null
      ? []
      : [{ role: one.role, temperatureC, setPointC, differenceC: temperatureC - setPointC }];
  });
  const farthest = off.sort((a, b) => Math.abs(b.differenceC) - Math.abs(a.differenceC))[0];
  if (farthest !== undefined && Math.abs(farthest.differenceC) > PLATEN_BAND_C)
    return { state: 'not-ready', code: 'platen-off', facts: { ...farthest, limitC: PLATEN_BAND_C } };
  const fastest = platens.reduce((most, one) => (moved(one) > moved(most) ? one : most));
  if (moved(fastest) > STEADY_C)
    return {
      state: 'not-ready',
      code: 'platen-moving',
      facts: { role: fastest.role, driftC: (fastest.driftCPerS ?? 0) * fastest.overS, overS: fastest.overS },
    };
  return {
    state: 'ready',
    code: 'platens-steady',
    facts: farthest === undefined ? {} : { differenceC: farthest.differenceC },
  };
}

function moved({ driftCPerS, overS }: ChannelAtRest): number {
  return Math.abs((driftCPerS ?? 0) * overS);
}

function setPointOf({ role }: ChannelAtRest, { platenSetPointC }: ReadyFacts['rules']): number | null {
  if (platenSetPointC === null) return null;
  return role === 'upper-platen' ? platenSetPointC.upper : platenSetPointC.lower;
}
