import { bucketPoints } from '../chart/bucket-points.ts';
import type { ChartTrace } from '../chart/ChartSpec.ts';
import { shownTemperature, shownToC } from '../chart/show-temperature.ts';
import { channelStyle } from './channel-style.ts';
import { isRunOpen } from './reduce-reading.ts';
import { staleAfterS } from './stale-after-s.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { TrialView } from './TrialView.ts';

/** Lengths of the time axis, s: it grows in steps so that the trace stands still between them. */
const AXIS_S = [60, 90, 120, 180, 240, 300, 420, 600, 900, 1200, 1800, 3600, 7200, 14_400, 28_800];
const IDLE_AXIS_S = 120;
/** Shown of what follows the opening of a stored run, s. */
const AFTER_REPLAY_S = 30;

/** What the chart shows now: the present run from just before press closed (also a stored one at its end), else the latest two minutes. */
export function chartOf(state: TrialScreenState): TrialView['chart'] {
  if (state.latest === null) return null;
  const { roles, rules } = state.setup;
  const traces: ChartTrace[] = roles.flatMap((role, channel) =>
    role === 'unused' ? [] : [{ ...channelStyle(role), points: bucketPoints(state.trace, channel) }],
  );
  const order = ['B', 'I', 'O', 'U', 'L', 'A'];
  traces.sort((a, b) => order.indexOf(a.letter) - order.indexOf(b.letter));
  const { fromS, toS, zeroS } = timeAxis(state, state.latest.timeS);
  const [lowC, highC] = temperatureAxis(traces, rules.targetC, state.unit);
  return {
    fromS,
    toS,
    zeroS,
    lowC,
    highC,
    unit: state.unit,
    ascii: false,
    targetC: rules.targetC,
    traces,
    marks: state.marks,
    band: isRunOpen(state) ? state.band.map((p) => ({ ...p, timeS: p.timeS + zeroS })) : [],
    longestBridgedS: Math.max(staleAfterS(state.intervalS), state.trace.bucketS * 1.5),
  };
}

function timeAxis(state: TrialScreenState, latestS: number): { fromS: number; toS: number; zeroS: number } {
  const open = isRunOpen(state);
  // A stored run stays in sight at its end, with its marks.
  const over = !open && state.setup.replay === true ? state.lastResult : null;
  const closedS = (open ? state.session?.run : over)?.pressClosed?.timeS;
  if (closedS === undefined) return { fromS: latestS - IDLE_AXIS_S, toS: latestS, zeroS: latestS };
  const untilS = over === null ? latestS : Math.min(latestS, (over.openedS ?? over.endedS) + AFTER_REPLAY_S);
  const runS = untilS - closedS;
  const lengthS = AXIS_S.find((length) => runS < length * 0.97) ?? runS * 1.1;
  return { fromS: closedS - lengthS * 0.06, toS: closedS + lengthS, zeroS: closedS };
}

/** From 50 below the lowest to 50 above the highest value, in steps of 50 of the unit shown, the target inside. */
function temperatureAxis(
  traces: readonly ChartTrace[],
  targetC: number,
  unit: 'F' | 'C',
): readonly [number, number] {
  let [low, high] = [targetC - 20, targetC + 20];
  for (const trace of traces) {
    for (const point of trace.points) {
      if (!point.measured) continue;
      low = Math.min(low, point.lowC);
      high = Math.max(high, point.highC);
    }
  }
  const step = 50;
  return [
    shownToC(Math.floor(shownTemperature(low, unit) / step) * step, unit),
    shownToC(Math.ceil(shownTemperature(high, unit) / step) * step, unit),
  ];
}
