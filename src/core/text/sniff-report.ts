import type { SniffedChannel, SniffReport } from '../sniff/SniffReport.ts';
import { neutralise } from './neutralise.ts';
import {
  differenceText,
  numberText,
  secondsText,
  type TemperatureUnit,
  temperatureText,
} from './units-text.ts';

/** What listening to a reader told, one sentence a line. */
export function sniffReportLines(report: SniffReport, unit: TemperatureUnit = 'F'): readonly string[] {
  const { counts } = report;
  if (counts.lines === 0)
    return [
      `nothing came in ${secondsText(report.listenedS)}`,
      'Check that the reader has power and that the baud rate fits; some readers send only when asked.',
    ];
  return [
    report.recognised ?? 'nothing recognised: no line had the form of a reading',
    ...(report.refusal === null ? [] : [`cannot be used as it is: ${neutralise(report.refusal.detail)}`]),
    `${counts.readings} readings from ${counts.lines} lines in ${secondsText(report.listenedS)}, ${rateText(report)}`,
    ...report.channels.map((channel) => channelLine(channel, unit)),
    troubleLine(report),
    clockLine(report),
    ...report.examples.map((text) => `  not usable: ${neutralise(text, { longest: 60 })}`),
  ];
}

function rateText({ rateHz }: SniffReport): string {
  if (rateHz === null) return 'sample rate not known';
  return rateHz >= 1 ? `${numberText(rateHz, 2)} a second` : `one every ${secondsText(1 / rateHz)}`;
}

function channelLine(channel: SniffedChannel, unit: TemperatureUnit): string {
  const name = channel.name === null ? '' : ` (${neutralise(channel.name, { longest: 30 })})`;
  const type = channel.thermocoupleType === null ? '' : `, type ${channel.thermocoupleType}`;
  const faults = Object.entries(channel.faults).map(([fault, count]) => `${count} × ${fault}`);
  if (channel.missing > 0) faults.push(`${channel.missing} × missing`);
  const parts = [
    channel.latestC === null ? 'no temperature' : `now ${temperatureText(channel.latestC, unit)}`,
    ...(channel.noiseC === null ? [] : [noiseText(channel, unit)]),
    ...faults,
  ];
  return `channel ${channel.number}${name}${type}: ${parts.join(', ')}`;
}

function noiseText({ noiseC, stepC }: SniffedChannel, unit: TemperatureUnit): string {
  const step = stepC === null ? '' : `, step ${fineDifferenceText(stepC, unit)}`;
  if (noiseC === null || stepC === null || noiseC < stepC / 2) return `noise below its step${step}`;
  return `noise ±${fineDifferenceText(noiseC, unit)}${step}`;
}

/** Noise and steps are often hundredths; one decimal would show 0. */
function fineDifferenceText(differenceC: number, unit: TemperatureUnit): string {
  if (differenceC >= 1) return differenceText(differenceC, unit);
  const fahrenheit = `${numberText(differenceC * 1.8, 3)} °F`;
  const celsius = `${numberText(differenceC, 3)} °C`;
  return unit === 'F' ? `${fahrenheit} (${celsius})` : `${celsius} (${fahrenheit})`;
}

function troubleLine({ counts }: SniffReport): string {
  const all: readonly (readonly [count: number, one: string, several: string])[] = [
    [counts.lostSamples, 'lost sample', 'lost samples'],
    [counts.duplicates, 'repeated or late sample', 'repeated or late samples'],
    [counts.badChecksum, 'bad checksum', 'bad checksums'],
    [counts.malformed, 'line with a wrong content', 'lines with a wrong content'],
    [counts.garbage, 'line that says nothing', 'lines that say nothing'],
    [counts.overLong, 'over-long line', 'over-long lines'],
    [counts.cutOff, 'cut-off line', 'cut-off lines'],
    [counts.startUnknown, 'first line that may lack its start', 'first lines that may lack their start'],
    [counts.restarts, 'restart of the reader', 'restarts of the reader'],
    [counts.unplugs, 'unplugging', 'unpluggings'],
    [counts.gaps, 'gap', 'gaps'],
  ];
  const seen = all
    .filter(([count]) => count > 0)
    .map(([count, one, several]) => `${count} ${count === 1 ? one : several}`);
  return seen.length === 0 ? 'no trouble on the wire' : `on the wire: ${seen.join(', ')}`;
}

/** The reader protocol lets a clock be off by 0.1 %. */
const FIRMWARE_LIMIT_PPM = 1000;

function clockLine({ clock }: SniffReport): string {
  if (clock.driftPpm === null || clock.standardUncertaintyPpm === null)
    return 'clock: not compared (the reader sends no time, or too short)';
  const { driftPpm, standardUncertaintyPpm: uncertaintyPpm } = clock;
  const way = driftPpm < 0 ? 'slow' : 'fast';
  const far =
    Math.abs(driftPpm) > FIRMWARE_LIMIT_PPM + 2 * uncertaintyPpm
      ? ': MORE than the 0.1 % that the reader protocol allows'
      : '';
  return `clock: the reader's is ${ppm(Math.abs(driftPpm))} ± ${ppm(uncertaintyPpm)} ppm ${way} against this computer's (standard uncertainty, over ${secondsText(clock.overS)})${far}`;
}

function ppm(value: number): string {
  return value >= 10 ? numberText(value, 0) : numberText(value, 1);
}
