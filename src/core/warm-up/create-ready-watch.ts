import { createArrivalForecast } from './create-arrival-forecast.ts';
import { createPlatenWatch } from './create-platen-watch.ts';
import type { ReadyEstimate, ReadyState, ReadyWatch, ReadyWatchOptions } from './ReadyWatch.ts';
import { WarmUpError } from './WarmUpError.ts';

/**
 * READY by rule, causal (nothing of the future is used): every platen's middle of five readings inside set point ± band
 * for the rule's time without a break. One odd reading breaks nothing; a platen outside, or 10 s without a reading, starts
 * its time anew. Refuses no platen, a band or a time that is not above 0.
 */
export function createReadyWatch({ rule, platens }: ReadyWatchOptions): ReadyWatch {
  if (
    !(rule.bandC > 0 && rule.forS >= 0 && Number.isFinite(rule.bandC + rule.forS)) ||
    platens.length === 0
  ) {
    throw new WarmUpError(
      'ready-rule-unusable',
      `the READY rule requires a platen, a band above 0 °C and a time, came ${platens.length} platens, ±${rule.bandC} °C for ${rule.forS} s`,
      'State a band and a time, for example 5F for 5min',
    );
  }
  const watches = platens.map((platen) => createPlatenWatch(platen, rule));
  const forecasts = platens.map((platen) => createArrivalForecast(platen.setPointC, rule.bandC));
  let timeS: number | null = null;
  let firstReadyAtS: number | null = null;
  let state: ReadyState | null = null;

  function estimate(ready: boolean): ReadyEstimate | null {
    const all: ReadyEstimate[] = [];
    for (const [index, watch] of watches.entries()) {
      const { inside, insideForS, temperatureC } = watch.readiness;
      const left = Math.max(0, rule.forS - insideForS);
      if (ready) return { earliestInS: 0, likelyInS: 0, latestInS: 0 };
      if (inside) all.push({ earliestInS: left, likelyInS: left, latestInS: left });
      else {
        const arrival = temperatureC === null ? null : forecasts[index]!.arrival;
        if (arrival === null) return null;
        all.push({
          earliestInS: arrival.earliestInS + rule.forS,
          likelyInS: arrival.likelyInS + rule.forS,
          latestInS: arrival.latestInS + rule.forS,
        });
      }
    }
    const last = (pick: (one: ReadyEstimate) => number) => Math.max(...all.map(pick));
    return {
      earliestInS: last((one) => one.earliestInS),
      likelyInS: last((one) => one.likelyInS),
      latestInS: last((one) => one.latestInS),
    };
  }

  function stateNow(): ReadyState {
    const readiness = watches.map((watch) => watch.readiness);
    const insideForS = Math.min(...readiness.map((one) => one.insideForS));
    const ready = timeS !== null && readiness.every((one) => one.inside && one.insideForS >= rule.forS);
    if (ready) firstReadyAtS ??= timeS;
    return { timeS, platens: readiness, ready, firstReadyAtS, insideForS, estimate: estimate(ready) };
  }

  return {
    accept(atS, temperaturesC) {
      timeS = Math.max(atS, timeS ?? atS);
      for (const [index, watch] of watches.entries()) {
        const temperatureC = temperaturesC[index] ?? null;
        watch.accept(timeS, temperatureC);
        if (temperatureC !== null && Number.isFinite(temperatureC))
          forecasts[index]!.accept(timeS, temperatureC);
      }
      state = stateNow();
      return state;
    },
    get state() {
      state ??= stateNow();
      return state;
    },
  };
}
