import { describe, expect, it } from 'vitest';
import { formatRecording } from '../../../src/core/recording/format-recording.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import { DEMO_SCENARIO } from '../../../src/core/simulator/demo-scenario.ts';
import type { Scenario } from '../../../src/core/simulator/Scenario.ts';
import { simulateRecording } from '../../../src/core/simulator/simulate-recording.ts';
import { simulateRun } from '../../../src/core/simulator/simulate-run.ts';
import { compensatedTemperatureC } from '../../../src/core/thermocouple/compensated-temperature-c.ts';
import { createProtocolDecoder } from '../../../src/core/wire/protocol/index.ts';
import type { ChannelValue, SampleEvent, WireEvent } from '../../../src/core/wire/WireEvent.ts';

type LineEntry = RecordingEntry & { kind: 'line' };

function eventsOf(scenario: Scenario): readonly WireEvent[] {
  const decoder = createProtocolDecoder();
  const { entries } = simulateRecording(scenario);
  return entries
    .filter((entry): entry is LineEntry => entry.kind === 'line')
    .flatMap((entry) => decoder.decode(entry));
}

function samplesOf(scenario: Scenario): readonly SampleEvent[] {
  return eventsOf(scenario).filter((event): event is SampleEvent => event.kind === 'sample');
}

function celsius(value: ChannelValue | undefined): number {
  if (value?.kind !== 'temperature') throw new Error(`expected a temperature, came ${value?.kind}`);
  return value.temperatureC;
}

const SHORT: Scenario = { ...DEMO_SCENARIO, closings: [], endS: 20 };
const silent = { whiteNoiseC: 0, correlatedNoiseC: 0, stepC: 0 };

describe('simulateRecording', () => {
  it('is the same to the last byte for the same scenario', () => {
    const text = () => {
      const { head, entries } = simulateRecording(DEMO_SCENARIO);
      return [...formatRecording(head, entries)].join('');
    };
    expect(text()).toBe(text());
  });

  it('first line is one the host joined in the middle; then every line is decoded and every 0.1 s has a sample', () => {
    const events = eventsOf(DEMO_SCENARIO);
    expect(events.filter((event) => event.kind === 'trouble')).toHaveLength(1);
    expect(events[0]).toMatchObject({ kind: 'trouble', trouble: 'start-unknown' });
    const samples = samplesOf(DEMO_SCENARIO);
    expect(samples.length).toBeGreaterThan(1950);
    samples.slice(1).forEach((sample, index) => {
      expect(sample.sequence! - samples[index]!.sequence!).toBe(1);
      // 0.1 s and the reader's clock 18 ppm fast: 100,001.8 µs, whole microseconds.
      expect(Math.abs(sample.deviceTimeUs! - samples[index]!.deviceTimeUs! - 100_001.8)).toBeLessThanOrEqual(
        1,
      );
    });
  });

  it('the head’s truth counts from the first reading: contact, sample clock and head agree within 0.1 ms', () => {
    const { head } = simulateRecording(DEMO_SCENARIO);
    const events = eventsOf(DEMO_SCENARIO);
    const contact = events.find((event) => event.kind === 'contact' && event.closed);
    const first = events.find((event): event is SampleEvent => event.kind === 'sample');
    if (contact?.kind !== 'contact') throw new Error('no contact line');
    const closedS = (contact.deviceTimeUs! - first!.deviceTimeUs!) / 1e6 / (1 + 18e-6);
    expect(Math.abs(closedS - head.truth!.pressClosedS!)).toBeLessThan(1e-4);
    const { closings } = simulateRun(DEMO_SCENARIO);
    expect(head.truth!.bondLineCrossingS! - head.truth!.pressClosedS!).toBeCloseTo(
      closings[0]!.bondLineCrossingS! - closings[0]!.pressClosedS,
      5,
    );
  });

  it('lines arrive in order, 0.4 to 6 ms after they were sent', () => {
    const { entries } = simulateRecording(DEMO_SCENARIO);
    const arrivals = entries.map((entry) => entry.arrivedUs);
    expect([...arrivals].sort((a, b) => a - b)).toEqual(arrivals);
    const beatsUs = arrivals.slice(10, 110).map((arrivedUs) => arrivedUs % 100_000);
    expect(Math.max(...beatsUs) - Math.min(...beatsUs)).toBeLessThan(6000);
    expect(Math.max(...beatsUs) - Math.min(...beatsUs)).toBeGreaterThan(500);
  });

  it('noise, steps: white 0.3 °C and AR(1) 0.4 °C with 0.7 are found again in 20,000 still readings', () => {
    const reader = {
      ...SHORT.reader,
      rateHz: 100,
      whiteNoiseC: 0,
      correlatedNoiseC: 0.4,
      correlation: 0.7,
      stepC: 0,
    };
    const series = (whiteNoiseC: number) =>
      samplesOf({ ...SHORT, endS: 200, reader: { ...reader, rateHz: 50, whiteNoiseC } }).map(
        (sample) => celsius(sample.channels[0]) - 24,
      );
    const moments = (values: readonly number[]) => {
      const mean = values.reduce((a, b) => a + b) / values.length;
      const c0 = values.reduce((s, v) => s + (v - mean) ** 2, 0) / values.length;
      const c1 = values.slice(1).reduce((s, v, i) => s + (v - mean) * (values[i]! - mean), 0) / values.length;
      return { variance: c0, lag1: c1 / c0 };
    };
    const correlated = moments(series(0));
    // 10,000 readings, about 1,800 independent ones: 4 standard errors of the variance are 4·√(2·2.9/10,000) ≈ 10 %.
    expect(Math.abs(correlated.variance / 0.16 - 1)).toBeLessThan(0.1);
    expect(Math.abs(correlated.lag1 - 0.7)).toBeLessThan(0.03);
    const both = moments(series(0.3));
    expect(Math.abs(both.variance / (0.16 + 0.09) - 1)).toBeLessThan(0.1);
    expect(Math.abs(both.lag1 - (0.7 * 0.16) / 0.25)).toBeLessThan(0.04);
  });

  it('quantises to 0.25 °C', () => {
    for (const sample of samplesOf(SHORT)) {
      for (const value of sample.channels) expect((celsius(value) * 4) % 1).toBe(0);
    }
  });

  it('a reader that sends emf gives the same temperatures as one that sends °C, within its steps', () => {
    const reader = { ...DEMO_SCENARIO.reader, ...silent };
    const inC = samplesOf({ ...DEMO_SCENARIO, reader });
    const inEmf = samplesOf({ ...DEMO_SCENARIO, reader: { ...reader, sends: 'emf' } });
    expect(inEmf).toHaveLength(inC.length);
    let worstC = 0;
    inEmf.forEach((sample, index) => {
      sample.channels.forEach((value, channel) => {
        if (value.kind !== 'emf') throw new Error(`expected an emf, came ${value.kind}`);
        const temperatureC = compensatedTemperatureC('K', value.emfUv, value.coldJunctionC);
        worstC = Math.max(worstC, Math.abs(temperatureC - celsius(inC[index]!.channels[channel])));
      });
    });
    // Half steps: 0.5 µV at 40 µV/°C, 1/32 °C of the cold junction, 0.005 °C of two decimals in each line.
    expect(worstC).toBeLessThan(0.5 / 39 + 1 / 32 + 0.01);
  });
});

describe('trouble of the channels', () => {
  const withTrouble = (trouble: Scenario['channelTroubles'][number], change: Partial<Scenario> = {}) =>
    samplesOf({
      ...DEMO_SCENARIO,
      reader: { ...DEMO_SCENARIO.reader, ...silent },
      channelTroubles: [trouble],
      ...change,
    });

  it('plug reversed: falls while the other probe rises, and is an over-range fault when too far', () => {
    const samples = withTrouble({ kind: 'plug-reversed', channel: 1 });
    const at = (seconds: number) => samples[seconds * 10]!.channels;
    expect(celsius(at(30)[0])).toBeLessThan(celsius(at(15)[0]) - 50);
    expect(celsius(at(30)[1])).toBeGreaterThan(celsius(at(15)[1]) + 50);
    expect(at(150)[0]).toEqual({ kind: 'fault', fault: 'over-range' });
  });

  it('extension reversed: wrong by about twice head minus reader, 2 · (41 − 26.4) = 29.2 °C', () => {
    const samples = withTrouble({ kind: 'extension-reversed', channel: 1, headC: 41 });
    expect(Math.abs(celsius(samples[20]!.channels[0]) - (24 - 29.2))).toBeLessThan(1.5);
  });

  it('type J wire on a reader set to K: 100 °C at the tip reads 121.4 °C (NIST tables: 5.269 − 1.350 + 1.057 = 4.976 mV)', () => {
    const right = samplesOf({ ...DEMO_SCENARIO, reader: { ...DEMO_SCENARIO.reader, ...silent } });
    const wrong = withTrouble({ kind: 'wire-type', channel: 1, wire: 'J' });
    const index = right.findIndex((sample) => celsius(sample.channels[0]) >= 100);
    const readC = celsius(wrong[index]!.channels[0]);
    // The reading taken is up to one sample's rise (0.35 °C) above 100 °C.
    expect(readC).toBeGreaterThan(121.3);
    expect(readC).toBeLessThan(121.9);
  });

  it('touching a platen: above 200 °C within 4 s of closing', () => {
    const samples = withTrouble({ kind: 'touches-platen', channel: 1 });
    expect(celsius(samples[110]!.channels[0])).toBeLessThan(30);
    expect(celsius(samples[160]!.channels[0])).toBeGreaterThan(200);
  });
});

describe('trouble on the wire', () => {
  it('lost lines leave a hole of as many numbers, damaged ones fail their checksum', () => {
    const scenario: Scenario = {
      ...SHORT,
      wireTroubles: [
        { kind: 'lost-lines', atS: 5, lines: 3 },
        { kind: 'damaged-lines', atS: 10, lines: 2 },
        { kind: 'garbage', atS: 15, text: '\u0000~x' },
      ],
    };
    const troubles = eventsOf(scenario).flatMap((event) => (event.kind === 'trouble' ? [event.trouble] : []));
    expect(troubles).toEqual(['start-unknown', 'bad-checksum', 'bad-checksum', 'garbage']);
    const numbers = samplesOf(scenario).map((sample) => sample.sequence!);
    const holes = numbers
      .slice(1)
      .map((number, index) => number - numbers[index]!)
      .filter((step) => step !== 1);
    expect(holes).toEqual([4, 3]);
  });

  it('unplugged: cut-off line, port lost, port back, then a reader that starts anew', () => {
    const { entries } = simulateRecording({
      ...SHORT,
      wireTroubles: [{ kind: 'unplugged', fromS: 8, toS: 12 }],
    });
    const around = entries.slice(
      entries.findIndex((entry) => entry.kind === 'line' && entry.wholeness === 'cut-off'),
    );
    expect(around.slice(0, 5).map((entry) => (entry.kind === 'host' ? entry.event : entry.kind))).toEqual([
      'line',
      'port-lost',
      'port-back',
      'line',
      'line',
    ]);
    expect(around[4]).toMatchObject({ text: expect.stringMatching(/^started power-up#/) });
    expect((around[2]!.arrivedUs - around[1]!.arrivedUs) / 1e6).toBeCloseTo(4, 0);
  });

  it('host asleep for 10 s: the host’s clock misses them, the reader’s does not', () => {
    const { entries } = simulateRecording({
      ...SHORT,
      endS: 30,
      wireTroubles: [{ kind: 'host-asleep', fromS: 8, toS: 18 }],
    });
    const slept = entries.findIndex((entry) => entry.kind === 'host');
    expect(entries[slept]).toMatchObject({
      event: 'host-slept',
      detail: '10.000 s, clock stood still 10.000 s',
    });
    expect(entries[slept + 1]!.arrivedUs - entries[slept - 1]!.arrivedUs).toBeLessThan(200_000);
  });

  it('device clock and sequence wrap at 2^32 µs and 65,536', () => {
    const samples = samplesOf({
      ...SHORT,
      reader: { ...SHORT.reader, clockStartUs: 2 ** 32 - 5_000_000, sequenceStart: 65_500 },
    });
    const wraps = (of: (sample: SampleEvent) => number) =>
      samples.slice(1).filter((sample, index) => of(sample) < of(samples[index]!)).length;
    expect(wraps((sample) => sample.deviceTimeUs!)).toBe(1);
    expect(wraps((sample) => sample.sequence!)).toBe(1);
  });
});
