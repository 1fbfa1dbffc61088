import { analyseChannel } from './analyse-channel.ts';
import { cautionsOf } from './cautions-of.ts';
import type { ChannelRecord, PlatenRecord } from './gather-platens.ts';
import { platenDifference } from './platen-difference.ts';
import { readyTimes } from './ready-times.ts';
import {
  type PlatenTrace,
  type PowerOn,
  WARM_UP_RULE_VERSION,
  type WarmUp,
  type WarmUpRules,
} from './WarmUp.ts';
import { WarmUpError } from './WarmUpError.ts';
import { withoutSpikes } from './without-spikes.ts';

/** Fewer readings of a channel than this say nothing of a warm-up. */
const LEAST_READINGS = 30;

/**
 * Everything a recording, or one heating of it, tells of its platens' warm-up. Power-on: as stated, else a note "heaters on", else where the
 * earliest platen's fitted rise leaves its start temperature (then no delay can be told). Refuses a recording
 * without platen channels or with under 30 readings of one.
 */
export function analyseWarmUp(
  record: PlatenRecord,
  rules: WarmUpRules,
  statedPowerOnS: number | null = null,
): WarmUp {
  const traces = record.channels.map((channel) => traceOf(channel, record.channels, rules));
  requireReadings(record, traces);
  const told: PowerOn | null =
    statedPowerOnS !== null
      ? { timeS: statedPowerOnS, by: 'stated' }
      : record.heatersOnS.length > 0
        ? { timeS: record.heatersOnS[0]!, by: 'note' }
        : null;
  const powerOn = told ?? powerOnFromRise(traces, record, rules);
  const analysed = traces.map((trace) => analyseChannel(trace, powerOn, record.closings, rules));
  const readiness = readyTimes(record, traces, rules);
  const channels = analysed.map(({ warmUp }, index) => ({
    ...warmUp,
    readyAtS: sincePower(readiness.each[index] ?? null, powerOn),
  }));
  return {
    ruleVersion: WARM_UP_RULE_VERSION,
    powerOn,
    endedS: record.endedS - powerOn.timeS,
    channels,
    difference: platenDifference(traces, channels, powerOn),
    readyAtS: sincePower(readiness.all, powerOn),
    rules,
    cautions: cautionsOf(
      channels,
      analysed.some((one) => one.startUnderWay),
      powerOn,
      record,
      rules,
    ),
    gaps: record.gaps.map(({ fromS, toS }) => ({ fromS: fromS - powerOn.timeS, toS: toS - powerOn.timeS })),
  };
}

function traceOf(channel: ChannelRecord, all: readonly ChannelRecord[], rules: WarmUpRules): PlatenTrace {
  const { samples, spikes } = withoutSpikes({
    timesS: Float64Array.from(channel.timesS),
    valuesC: Float64Array.from(channel.valuesC),
  });
  const alike = all.filter((one) => one.role === channel.role);
  const name = channel.role.replace('-', ' ');
  return {
    channel: channel.channel,
    role: channel.role,
    label: alike.length > 1 ? `${name} (channel ${channel.channel})` : name,
    setPointC:
      rules.setPointC === null
        ? null
        : channel.role === 'lower-platen'
          ? rules.setPointC.lower
          : rules.setPointC.upper,
    samples,
    spikes,
    faults: channel.faults,
  };
}

function requireReadings(record: PlatenRecord, traces: readonly PlatenTrace[]): void {
  if (traces.length === 0) {
    throw new WarmUpError(
      'no-platen-channel',
      'a warm-up requires a channel on the upper or lower platen, came none',
      'Say what each channel is laid on, for example --roles upper-platen,lower-platen',
    );
  }
  for (const { label, samples, faults } of traces) {
    if (samples.timesS.length >= LEAST_READINGS) continue;
    throw new WarmUpError(
      'too-few-readings',
      `${label}: a warm-up requires ${LEAST_READINGS} readings, came ${samples.timesS.length} (${faults} faults, ${record.counts.readings} lines with readings)`,
      'Check the probe and its plug, or name the channel "unused" with --roles',
    );
  }
}

function powerOnFromRise(traces: readonly PlatenTrace[], record: PlatenRecord, rules: WarmUpRules): PowerOn {
  const beganS = Math.min(...traces.map(({ samples }) => samples.timesS[0]!));
  const begin: PowerOn = { timeS: beganS, by: 'rise' };
  const departs = traces.flatMap((trace) => {
    const departsS = analyseChannel(trace, begin, record.closings, rules).warmUp.fullPower?.departsS.value;
    return departsS === undefined ? [] : [beganS + departsS];
  });
  return departs.length === 0 ? begin : { timeS: Math.max(beganS, Math.min(...departs)), by: 'rise' };
}

function sincePower(timeS: number | null, powerOn: PowerOn): number | null {
  return timeS === null ? null : timeS - powerOn.timeS;
}
