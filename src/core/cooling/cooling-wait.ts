import type { CoolingPoint, CoolingWait } from './CoolingWait.ts';

const FEWEST_POINTS = 8;
const SHORTEST_STRETCH_S = 15;
/** Seconds that are fitted, counted back from now: the shortest stretch with a plain fall, else the longest. Judgement. */
const STRETCHES_S = [20, 30, 45, 60] as const;
const PLAIN_FALL_C = 4;
/** Below this fall over the stretch the noise decides, °C. */
const LEAST_FALL_C = 0.8;
/** How wrong the room's temperature may be, °C: measured, or stated or assumed. Judgement. */
const ROOM_ERROR_C = { measured: 1, assumed: 2 } as const;

export interface CoolingRoom {
  readonly ambientC: number;
  /** A carrier warmer than ambient by more than this starts the run hot, °C of difference. */
  readonly warmLimitC: number;
  readonly measured: boolean;
}

/**
 * How long the carrier still needs to cool: T(t) = Ta + (T0 − Ta)·exp(−t/τ) is fitted to the latest 20 to 60 s as a straight
 * line in ln(T − Ta), each point weighted with (T − Ta)²; wait = τ·ln((T − Ta)/limit). The range holds a room wrong by
 * 1 °C where measured (2 °C where not), two standard errors of the slope, and 10 % because a part is not first order.
 * Temperatures °C, times s. Says nothing (`wait` null) with fewer than 8 points, under 15 s, or while it does not fall.
 * Null without a point. Source: Newton's law of cooling.
 */
export function coolingWait(points: readonly CoolingPoint[], room: CoolingRoom): CoolingWait | null {
  const sound = points.filter((p) => Number.isFinite(p.temperatureC) && Number.isFinite(p.timeS));
  const latest = sound.at(-1);
  if (latest === undefined) return null;
  const limitC = room.ambientC + room.warmLimitC;
  const { temperatureC } = latest;
  if (temperatureC <= limitC) return { kind: 'cool', temperatureC };
  const warm = (why: 'too-early' | 'not-cooling'): CoolingWait => ({
    kind: 'warm',
    temperatureC,
    limitC,
    wait: null,
    why,
  });
  const fitted = latestStretch(sound, latest);
  const first = fitted[0] ?? latest;
  if (fitted.length < FEWEST_POINTS || latest.timeS - first.timeS < SHORTEST_STRETCH_S)
    return warm('too-early');
  if (first.temperatureC - temperatureC < LEAST_FALL_C) return warm('not-cooling');

  const errorC = room.measured ? ROOM_ERROR_C.measured : ROOM_ERROR_C.assumed;
  const likely = waitFor(fitted, room.ambientC, limitC);
  if (likely === null) return warm('not-cooling');
  const ends = [room.ambientC - errorC, room.ambientC + errorC].flatMap((ambientC) => {
    const one = waitFor(fitted, ambientC, limitC);
    return one === null ? [] : [one.waitS - one.spreadS, one.waitS + one.spreadS];
  });
  const all = [likely.waitS - likely.spreadS, likely.waitS + likely.spreadS, ...ends];
  return {
    kind: 'warm',
    temperatureC,
    limitC,
    wait: {
      waitS: likely.waitS,
      earliestS: Math.max(0, 0.9 * Math.min(...all)),
      latestS: 1.1 * Math.max(...all),
      timeConstantS: likely.timeConstantS,
    },
    why: null,
  };
}

/** A short stretch soon forgets what came before (the press still closed, no fan yet). */
function latestStretch(points: readonly CoolingPoint[], latest: CoolingPoint): readonly CoolingPoint[] {
  let stretch: readonly CoolingPoint[] = [];
  for (const overS of STRETCHES_S) {
    stretch = points.filter((p) => p.timeS >= latest.timeS - overS);
    if ((stretch[0] ?? latest).temperatureC - latest.temperatureC >= PLAIN_FALL_C) break;
  }
  return stretch;
}

interface Wait {
  readonly waitS: number;
  readonly spreadS: number;
  readonly timeConstantS: number;
}

/** Wait until `limitC` by the fit with this room temperature; null while nothing cools or the room is warmer. */
function waitFor(points: readonly CoolingPoint[], ambientC: number, limitC: number): Wait | null {
  const above = points.filter((p) => p.temperatureC > ambientC + 0.5);
  const latest = above.at(-1);
  if (latest === undefined || limitC <= ambientC) return null;
  let [sum, sumT, sumY] = [0, 0, 0];
  const at = above.map(({ timeS, temperatureC }) => {
    const weight = (temperatureC - ambientC) ** 2;
    const t = timeS - latest.timeS;
    const y = Math.log(temperatureC - ambientC);
    sum += weight;
    sumT += weight * t;
    sumY += weight * y;
    return { weight, t, y };
  });
  const [meanT, meanY] = [sumT / sum, sumY / sum];
  let [stt, sty] = [0, 0];
  for (const { weight, t, y } of at) {
    stt += weight * (t - meanT) ** 2;
    sty += weight * (t - meanT) * (y - meanY);
  }
  const slope = sty / stt;
  if (!(stt > 0) || !(slope < 0)) return null;
  const squares = at.reduce((s, { weight, t, y }) => s + weight * (y - meanY - slope * (t - meanT)) ** 2, 0);
  const slopeError = Math.sqrt(squares / Math.max(1, at.length - 2) / stt);
  const nowY = meanY - slope * meanT;
  const waitS = Math.max(0, (nowY - Math.log(limitC - ambientC)) / -slope);
  return { waitS, spreadS: waitS * Math.min(1, (2 * slopeError) / -slope), timeConstantS: -1 / slope };
}
