import { bucketPoints } from '../chart/bucket-points.ts';
import type { ChartBandPoint, ChartSpec } from '../chart/ChartSpec.ts';
import { shownTemperature, shownToC } from '../chart/show-temperature.ts';
import { channelStyle } from '../screen/channel-style.ts';
import { staleAfterS } from '../screen/stale-after-s.ts';
import { WARM_UP_LIVE_TEXT } from '../text/warm-up-live-text.ts';
import type { WarmUpScreenState } from './WarmUpScreen.ts';
import { NEAR_C } from './warm-up-standing.ts';

/** Lengths of the time axis, s: it grows in steps so that the traces stand still between them. */
const AXIS_S = [600, 1200, 1800, 2700, 3600, 5400, 7200, 10_800, 14_400, 21_600, 28_800];
/** Near set point only the latest stretch is shown, s, in steps of a minute. */
const NEAR_S = 900;
const MINUTE_S = 60;
const BAND_POINTS = 240;

/** Both platens, set points and their bands; the axis counts from heaters on, else from the first reading. Null before a reading. */
export function warmUpChart(state: WarmUpScreenState): Omit<ChartSpec, 'columns' | 'rows' | 'ascii'> | null {
  const latestS = state.ready.timeS;
  if (latestS === null) return null;
  const { rule, unit, ready, heaters } = state;
  const near = ready.platens.every(
    ({ temperatureC, setPointC }) => temperatureC !== null && Math.abs(temperatureC - setPointC) <= NEAR_C,
  );
  const zeroS = heaters?.onS ?? 0;
  const { fromS, toS } = timeAxis(latestS, Math.min(zeroS, latestS), near);
  const traces = state.channels.map(({ role }, i) => ({
    ...channelStyle(role),
    // The two platens are all that is drawn: solid and dashed are told apart best.
    line: role === 'upper-platen' ? ('solid' as const) : ('dashed' as const),
    points: bucketPoints(state.trace, i),
  }));
  const sets = [...new Set(ready.platens.map(({ setPointC }) => setPointC))];
  const [lowC, highC] = temperatureAxis(
    traces.flatMap(({ points }) => points.filter((one) => one.measured && one.toS >= fromS)),
    sets,
    rule.bandC,
    {
      unit,
      stepShown: near ? 10 : 50,
      // Where it came from is no more of interest near the set point.
      lowestC: near ? Math.min(...sets) - NEAR_C : Number.NEGATIVE_INFINITY,
    },
  );
  return {
    fromS,
    toS,
    zeroS,
    lowC,
    highC,
    unit,
    targetC: sets.length === 1 ? sets[0]! : null,
    traces,
    marks: [
      ...(heaters === null ? [] : [{ timeS: heaters.onS, label: WARM_UP_LIVE_TEXT.marks.heaters }]),
      ...(ready.firstReadyAtS === null
        ? []
        : [{ timeS: ready.firstReadyAtS, label: WARM_UP_LIVE_TEXT.marks.ready }]),
    ],
    band: sets.flatMap((setPointC) => bandOf(setPointC, rule.bandC, fromS, toS)),
    longestBridgedS: Math.max(staleAfterS(Math.max(1, state.intervalS ?? 0)), state.trace.bucketS * 1.5),
  };
}

function timeAxis(latestS: number, zeroS: number, near: boolean) {
  if (near && latestS - zeroS > NEAR_S) {
    const toS = Math.ceil(latestS / MINUTE_S + 0.5) * MINUTE_S;
    return { fromS: toS - NEAR_S, toS };
  }
  const goneS = latestS - zeroS;
  const lengthS = AXIS_S.find((length) => goneS < length * 0.97) ?? goneS * 1.1;
  return { fromS: zeroS - lengthS * 0.04, toS: zeroS + lengthS };
}

/** Round steps about all values shown, set points and bands. */
function temperatureAxis(
  points: readonly { readonly lowC: number; readonly highC: number }[],
  sets: readonly number[],
  bandC: number,
  {
    unit,
    stepShown,
    lowestC,
  }: { readonly unit: 'F' | 'C'; readonly stepShown: number; readonly lowestC: number },
): readonly [number, number] {
  let low = Math.min(...sets) - 2 * bandC;
  let high = Math.max(...sets) + 2 * bandC;
  for (const point of points) {
    low = Math.min(low, Math.max(point.lowC, lowestC));
    high = Math.max(high, point.highC);
  }
  return [
    shownToC(Math.floor(shownTemperature(low, unit) / stepShown) * stepShown, unit),
    shownToC(Math.ceil(shownTemperature(high, unit) / stepShown) * stepShown, unit),
  ];
}

function bandOf(setPointC: number, bandC: number, fromS: number, toS: number): readonly ChartBandPoint[] {
  return Array.from({ length: BAND_POINTS + 1 }, (_, i) => ({
    timeS: fromS + ((toS - fromS) * i) / BAND_POINTS,
    lowC: setPointC - bandC,
    highC: setPointC + bandC,
  }));
}
