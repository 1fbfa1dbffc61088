import { collectSamples } from './collect-samples.ts';
import { findGaps } from './find-gaps.ts';
import { gatherChannelFacts } from './gather-channel-facts.ts';
import { HoldCounter } from './HoldCounter.ts';
import { intervalBefore } from './interval-before.ts';
import { median } from './median.ts';
import type { ChannelFacts, RunFacts } from './RunFacts.ts';
import type { ChannelCrossing, Crossing, HoldResult } from './RunResult.ts';
import { plain, type RunUnderWay } from './RunUnderWay.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

/** Everything about a finished run that its result and its checks are worked out from. */
export function gatherRunFacts(run: RunUnderWay, endedBy: RunFacts['endedBy'], endedS: number): RunFacts {
  const { trace, rules, roles, bondLineChannels, resolutions } = run.around;
  const pressClosed = run.pressClosed;
  const closedS = pressClosed?.timeS ?? run.fromS;
  const fallS = run.fall.startedS;
  const openedS = run.opened?.timeS ?? fallS;
  const openedBy = run.opened?.by ?? (fallS === null ? null : 'fall');
  const closedUntilS = Math.min(run.closedUntilS, endedS);
  const restUntilS = Math.min(closedS, run.onset?.timeS ?? closedS);
  const channels = roles.map((role, channel) =>
    gatherChannelFacts(trace, channel, role, {
      fromS: run.fromS,
      closedS,
      restUntilS: role.startsWith('bond-line') ? restUntilS : closedS,
      riseFromS: Math.max(run.riseFromS, closedS),
      closedUntilS,
      resolutionC: resolutions[channel]!.resolutionC,
    }),
  );
  const bondLine = channels.filter((one) => bondLineChannels.includes(one.channel));
  const crossings: ChannelCrossing[] = run.watches.map((watch, at) => ({
    channel: bondLineChannels[at]! + 1,
    role: roles[bondLineChannels[at]!]!,
    crossing: watch.final === null ? null : plain(watch.final),
  }));
  const crossing = run.final;
  const main = mainChannel(bondLine, crossings, crossing);
  const intervalS = typicalInterval(trace, run.fromS, endedS);
  const crossedBefore = crossing !== null && pressClosed !== null && crossing.timeS <= pressClosed.timeS;
  return {
    rules,
    trace,
    fromS: run.fromS,
    endedS,
    intervalS,
    channels,
    bondLine,
    platens: channels.filter((one) => one.role === 'upper-platen' || one.role === 'lower-platen'),
    pressClosed,
    onset: run.onset,
    crossing,
    crossings,
    // A crossing before press closed is no soak time: there is nothing to time.
    soakTimeS:
      crossing === null || pressClosed === null || crossedBefore ? null : crossing.timeS - pressClosed.timeS,
    openedS,
    openedBy,
    endedBy,
    startC:
      main === null
        ? null
        : startTemperature(
            trace,
            main,
            restUntilS,
            run.fromS,
            run.onset?.baselineSeen ? run.onset.baselineC : null,
          ),
    peakC: highest(bondLine),
    startedAbove:
      crossedBefore || run.watches.some((watch) => watch.latestValidS !== null && !watch.everBelow),
    hold: crossing === null ? null : countHold(trace, bondLineChannels, crossing.timeS, closedUntilS, rules),
    gaps:
      main === null
        ? []
        : findGaps(trace, main.channel, { fromS: closedS, toS: closedUntilS, intervalS }, run.gaps),
    platenAtClosingC: {
      upper: levelAt(trace, roles.indexOf('upper-platen'), closedS),
      lower: levelAt(trace, roles.indexOf('lower-platen'), closedS),
    },
    conditions: run.conditions,
    spoiltReason: run.spoiltReason,
    closingTakenBack: run.closingTakenBack,
    notes: run.notes,
  };
}

/** The bond-line channel whose crossing is the run's; without one the first that has readings. */
function mainChannel(
  bondLine: readonly ChannelFacts[],
  crossings: readonly ChannelCrossing[],
  crossing: Crossing | null,
): ChannelFacts | null {
  const slowest = crossings.findIndex(
    (one) => one.crossing !== null && one.crossing.timeS === crossing?.timeS,
  );
  return bondLine[slowest] ?? bondLine.find((one) => one.validReadings > 0) ?? bondLine[0] ?? null;
}

function startTemperature(
  trace: TraceBuffer,
  main: ChannelFacts,
  restUntilS: number,
  fromS: number,
  baselineC: number | null,
): number | null {
  const before = collectSamples(
    trace,
    main.channel,
    Math.max(fromS, restUntilS - Math.max(3, 1.2 * intervalBefore(trace, restUntilS))),
    restUntilS,
  );
  if (before.valuesC.length > 0) return median(before.valuesC);
  // A first reading well after closing says nothing of the start.
  const after = collectSamples(trace, main.channel, restUntilS, restUntilS + 1);
  return after.valuesC[0] ?? baselineC;
}

function highest(channels: readonly ChannelFacts[]): number | null {
  const peaks = channels.flatMap((one) => (one.peakC === null ? [] : [one.peakC]));
  return peaks.length === 0 ? null : Math.max(...peaks);
}

function levelAt(trace: TraceBuffer, channel: number, timeS: number): number | null {
  if (channel < 0) return null;
  const before = collectSamples(trace, channel, timeS - 3, timeS);
  if (before.valuesC.length > 0) return median(before.valuesC);
  return collectSamples(trace, channel, timeS, timeS + 3).valuesC[0] ?? null;
}

function typicalInterval(trace: TraceBuffer, fromS: number, toS: number): number {
  const intervals: number[] = [];
  const first = trace.indexFrom(fromS);
  const stride = Math.max(1, Math.floor((trace.length - first) / 500));
  for (let index = first + 1; index < trace.length && trace.timeAt(index) <= toS; index += stride)
    intervals.push(trace.timeAt(index) - trace.timeAt(index - 1));
  return median(intervals) ?? 1;
}

function countHold(
  trace: TraceBuffer,
  bondLineChannels: readonly number[],
  crossingS: number,
  untilS: number,
  rules: RunFacts['rules'],
): HoldResult & { readonly lowestC: number | null } {
  const hold = new HoldCounter(crossingS, intervalBefore(trace, crossingS), rules);
  for (let index = trace.indexFrom(crossingS); index < trace.length; index++) {
    const timeS = trace.timeAt(index);
    if (timeS > untilS) break;
    let coldestC = Number.POSITIVE_INFINITY;
    for (const channel of bondLineChannels) {
      const valueC = trace.valueAt(channel, index);
      if (valueC < coldestC) coldestC = valueC;
    }
    if (coldestC < Number.POSITIVE_INFINITY) hold.add(timeS, coldestC);
  }
  return { ...hold.result(), lowestC: hold.lowestC };
}
