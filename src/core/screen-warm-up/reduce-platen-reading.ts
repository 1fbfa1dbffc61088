import { addToBuckets } from '../chart/add-to-buckets.ts';
import type { WarmUpScreenEvent, WarmUpScreenState, WarmUpStep } from './WarmUpScreen.ts';

/** Digits change at most four times a second, µs. */
const SHOWN_US = 250_000;
/** Longer steps between readings are gaps, s. */
const LONGEST_STEP_S = 15;
/** All platens inside the band for so long: they have been there, s. Judgement, no source. */
const INSIDE_S = 10;
/** A platen this far below its set point is being heated anew, °C. Judgement, no source. */
export const ANEW_C = 50;

/** A reading of every platen: trace, figures, what was reached; the bell rings once, at the first READY. */
export function reducePlatenReading(
  state: WarmUpScreenState,
  { ready, values, atUs }: Extract<WarmUpScreenEvent, { kind: 'reading' }>,
): WarmUpStep {
  const rings = ready.ready && !state.rung;
  const draw = atUs - state.shownUs >= SHOWN_US * state.speed;
  const stepS = ready.timeS === null || state.ready.timeS === null ? 0 : ready.timeS - state.ready.timeS;
  const inside = ready.platens.every((one) => one.inside);
  const anew = ready.platens.some(
    (one) => one.temperatureC !== null && one.setPointC - one.temperatureC > ANEW_C,
  );
  return [
    {
      ...state,
      ready,
      ...(draw ? { shown: ready, shownUs: atUs } : {}),
      faults: values.map((value) => (value.kind === 'fault' ? value.fault : null)),
      trace: ready.timeS === null ? state.trace : addToBuckets(state.trace, ready.timeS, values),
      intervalS:
        stepS <= 0 || stepS > LONGEST_STEP_S
          ? state.intervalS
          : (state.intervalS ?? stepS) + (stepS - (state.intervalS ?? stepS)) * 0.05,
      latestUs: Math.max(state.latestUs ?? atUs, atUs),
      lowestC: ready.platens.map(({ temperatureC }, i) => {
        const before = state.lowestC[i] ?? null;
        return temperatureC === null ? before : Math.min(before ?? temperatureC, temperatureC);
      }),
      wasInside: !anew && (state.wasInside || (inside && ready.insideForS >= INSIDE_S)),
      rung: state.rung || rings,
    },
    rings ? [{ kind: 'bell' }] : [],
  ];
}
