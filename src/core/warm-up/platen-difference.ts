import { mean } from './straight-drift.ts';
import type { ChannelWarmUp, PlatenDifference, PlatenTrace, PowerOn } from './WarmUp.ts';

/** Over so long the difference is averaged before the largest is looked for, s. */
const AVERAGED_S = 10;

/** Upper less lower platen, °C: mean over the steady stretch both share, and the largest before. Null without both. */
export function platenDifference(
  traces: readonly PlatenTrace[],
  channels: readonly ChannelWarmUp[],
  powerOn: PowerOn,
): PlatenDifference | null {
  const upper = traces.findIndex((trace) => trace.role === 'upper-platen');
  const lower = traces.findIndex((trace) => trace.role === 'lower-platen');
  if (upper < 0 || lower < 0) return null;
  const { timesS, differencesC } = paired(traces[upper]!, traces[lower]!);
  const steady = [channels[upper]!.steady, channels[lower]!.steady] as const;
  const fromS = steady[0] === null || steady[1] === null ? null : Math.max(steady[0].fromS, steady[1].fromS);
  const toS = steady[0] === null || steady[1] === null ? null : Math.min(steady[0].toS, steady[1].toS);
  const shared =
    fromS === null || toS === null
      ? []
      : differencesC.filter((_, i) => {
          const since = timesS[i]! - powerOn.timeS;
          return since >= fromS && since <= toS;
        });
  const heatingUntilS = Math.max(
    ...[upper, lower].map((i) => channels[i]!.settlingTimeS ?? Number.POSITIVE_INFINITY),
  );
  const largest = largestAveraged(timesS, differencesC, heatingUntilS + powerOn.timeS);
  return {
    steadyC: shared.length === 0 ? null : mean(shared),
    largestWhileHeatingC: largest.differenceC,
    largestAtS: largest.atS - powerOn.timeS,
  };
}

function paired(upper: PlatenTrace, lower: PlatenTrace): { timesS: number[]; differencesC: number[] } {
  const timesS: number[] = [];
  const differencesC: number[] = [];
  let j = 0;
  for (let i = 0; i < upper.samples.timesS.length; i++) {
    const timeS = upper.samples.timesS[i]!;
    while (j < lower.samples.timesS.length && lower.samples.timesS[j]! < timeS) j++;
    if (lower.samples.timesS[j] !== timeS) continue;
    timesS.push(timeS);
    differencesC.push(upper.samples.valuesC[i]! - lower.samples.valuesC[j]!);
  }
  return { timesS, differencesC };
}

function largestAveraged(timesS: readonly number[], differencesC: readonly number[], untilS: number) {
  let best = { differenceC: 0, atS: timesS[0] ?? 0 };
  let from = 0;
  let sum = 0;
  for (let i = 0; i < timesS.length && timesS[i]! <= untilS; i++) {
    sum += differencesC[i]!;
    while (timesS[i]! - timesS[from]! > AVERAGED_S) sum -= differencesC[from++]!;
    const averageC = sum / (i - from + 1);
    if (Math.abs(averageC) > Math.abs(best.differenceC))
      best = { differenceC: averageC, atS: (timesS[i]! + timesS[from]!) / 2 };
  }
  return best;
}
