import { describe, expect, it } from 'vitest';
import { createReadingAssembler } from '../../../src/core/reading/create-reading-assembler.ts';
import type { StreamEvent } from '../../../src/core/reading/StreamEvent.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import type { WireEvent } from '../../../src/core/wire/WireEvent.ts';
import { sample, scriptedDecoder } from './scripted-decoder.ts';

function assemble(
  entries: (decoder: ReturnType<typeof scriptedDecoder>) => RecordingEntry[],
  wraps?: Parameters<typeof scriptedDecoder>[0],
) {
  const decoder = scriptedDecoder(wraps);
  const assembler = createReadingAssembler({ decoder });
  const events = entries(decoder).flatMap((entry) => [...assembler.accept(entry)]);
  events.push(...assembler.finish());
  return { assembler, events };
}
const timesS = (events: readonly StreamEvent[]) =>
  events.flatMap((event) => (event.kind === 'reading' ? [event.reading.timeS] : []));
const gaps = (events: readonly StreamEvent[]) => events.filter((event) => event.kind === 'gap');
/** Ten readings a second, 3 ms under way. */
const steady = (
  decoder: ReturnType<typeof scriptedDecoder>,
  from: number,
  count: number,
  deviceStartUs = 0,
  arrivedStartUs = 0,
) =>
  Array.from({ length: count }, (_, i) =>
    decoder.line(
      arrivedStartUs + (from + i) * 100_000 + 3_000,
      sample((from + i) % 65536, (deviceStartUs + (from + i) * 100_000) % 2 ** 32),
    ),
  );
const host = (
  arrivedUs: number,
  event: Extract<RecordingEntry, { kind: 'host' }>['event'],
  detail = '',
): RecordingEntry => ({ kind: 'host', arrivedUs, event, detail });

describe('createReadingAssembler', () => {
  it('gives the first reading 0 s and later ones the reader clock, whatever their arrival', () => {
    const { events } = assemble((d) => [
      d.line(5_000_000, sample(7, 1_000_000)),
      d.line(5_190_000, sample(8, 1_100_000)),
      d.line(5_200_000, sample(9, 1_200_000)),
    ]);
    expect(timesS(events)).toEqual([0, 0.1, 0.2]);
    expect(gaps(events)).toEqual([]);
  });

  it('takes time from arrival where the reader has no clock', () => {
    const { events } = assemble((d) => [1e6, 1.5e6, 2.25e6].map((us) => d.line(us, sample(null, null))));
    expect(timesS(events)).toEqual([0, 0.5, 1.25]);
  });

  it('drops and counts a repeated sample', () => {
    const { events, assembler } = assemble((d) => [...steady(d, 0, 5), ...steady(d, 4, 3)]);
    expect(timesS(events)).toHaveLength(7);
    expect(assembler.counts).toMatchObject({ duplicates: 1, readings: 7, gaps: 0, lostSamples: 0 });
  });

  it('drops and counts a late line; it is no restart', () => {
    const { events, assembler } = assemble((d) => [
      ...steady(d, 0, 5),
      ...steady(d, 6, 1),
      ...steady(d, 5, 1),
      ...steady(d, 7, 3),
    ]);
    expect(timesS(events)).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.6, 0.7, 0.8, 0.9]);
    expect(assembler.counts).toMatchObject({ duplicates: 1, restarts: 0, lostSamples: 1, gaps: 1 });
  });

  it('makes missing sequence numbers a gap of 3 lost samples', () => {
    const { events, assembler } = assemble((d) => [...steady(d, 0, 5), ...steady(d, 8, 2)]);
    expect(gaps(events)).toEqual([
      { kind: 'gap', fromS: 0.4, toS: 0.8, cause: 'lost-samples', lostSamples: 3 },
    ]);
    expect(assembler.counts.lostSamples).toBe(3);
  });

  it('goes on by arrival after the reader says it started', () => {
    const { events, assembler } = assemble((d) => [
      ...steady(d, 0, 50),
      d.line(6_000_000, { kind: 'started' }),
      ...steady(d, 0, 3, 200_000, 6_500_000),
    ]);
    // Last before: 4.9 s. First after arrives at 6.503 s; the least delay was 3 ms.
    expect(gaps(events)).toEqual([
      { kind: 'gap', fromS: 4.9, toS: 6.5, cause: 'reader-restarted', lostSamples: null },
    ]);
    expect(timesS(events).slice(-3)).toEqual([6.5, 6.6, 6.7]);
    expect(assembler.counts.restarts).toBe(1);
  });

  it('sees a restart that the reader did not tell: far and near sequence', () => {
    for (const ran of [200, 20]) {
      const { events, assembler } = assemble((d) => [
        ...steady(d, 0, ran),
        ...steady(d, 0, 4, 200_000, ran * 100_000 + 900_000),
      ]);
      expect(assembler.counts.restarts).toBe(1);
      expect(gaps(events)).toMatchObject([{ cause: 'reader-restarted' }]);
      expect(timesS(events).at(-1)).toBeCloseTo(ran * 0.1 + 0.9 + 0.3, 6);
    }
  });

  it('a silent reader of 10 Hz: 0.9 s is no gap, 1.2 s is one', () => {
    const at = (us: number[]) => assemble((d) => us.map((t, i) => d.line(t, sample(i, t))));
    const before = Array.from({ length: 10 }, (_, i) => i * 100_000);
    expect(gaps(at([...before, 1_800_000]).events)).toEqual([]);
    expect(gaps(at([...before, 2_100_000]).events)).toEqual([
      { kind: 'gap', fromS: 0.9, toS: 2.1, cause: 'silence', lostSamples: 0 },
    ]);
  });

  it('marks an unplug of 4 s as a gap; the reader kept its clock', () => {
    const { events, assembler } = assemble((d) => [
      ...steady(d, 0, 50),
      host(5_100_000, 'port-lost'),
      host(8_000_000, 'port-back'),
      ...steady(d, 90, 3),
    ]);
    expect(gaps(events)).toEqual([{ kind: 'gap', fromS: 4.9, toS: 9, cause: 'unplugged', lostSamples: 40 }]);
    expect(assembler.counts).toMatchObject({ unplugs: 1, restarts: 0, lostSamples: 40 });
  });

  it('an unplugged reader that lost its power begins anew, by arrival', () => {
    const { events, assembler } = assemble((d) => [
      ...steady(d, 0, 50),
      host(5_100_000, 'port-lost'),
      host(8_000_000, 'port-back'),
      ...steady(d, 0, 3, 500_000, 8_700_000),
    ]);
    expect(gaps(events)).toEqual([
      { kind: 'gap', fromS: 4.9, toS: 8.7, cause: 'unplugged', lostSamples: null },
    ]);
    expect(assembler.counts.restarts).toBe(1);
  });

  it('a reader still away at the end leaves a gap to the last entry', () => {
    const { events } = assemble((d) => [...steady(d, 0, 50), host(7_003_000, 'port-lost')]);
    expect(gaps(events)).toEqual([
      { kind: 'gap', fromS: 4.9, toS: 7, cause: 'unplugged', lostSamples: null },
    ]);
  });

  it('a host that slept 30 s without counting them is a gap with and without a reader clock', () => {
    for (const clock of [true, false]) {
      const { events } = assemble((d) => [
        ...Array.from({ length: 20 }, (_, i) => d.line(i * 1e5, sample(null, clock ? i * 1e5 : null))),
        host(1_950_000, 'host-slept', '30.000 s, clock stood still 30.000 s'),
        ...Array.from({ length: 3 }, (_, i) =>
          d.line(2e6 + i * 1e5, sample(null, clock ? 32e6 + i * 1e5 : null)),
        ),
      ]);
      expect(gaps(events)).toEqual([
        { kind: 'gap', fromS: 1.9, toS: 32, cause: 'host-asleep', lostSamples: null },
      ]);
      expect(timesS(events).at(-1)).toBeCloseTo(32.2, 9);
    }
  });

  it('a host stall that delivers 5 s of lines at once is no gap: the reader clock bridges it', () => {
    const { events, assembler } = assemble((d) => [
      ...steady(d, 0, 50),
      ...Array.from({ length: 50 }, (_, i) =>
        d.line(10_000_000 + i, sample(50 + i, 5_000_000 + i * 100_000)),
      ),
      ...steady(d, 100, 20),
    ]);
    expect(gaps(events)).toEqual([]);
    expect(assembler.counts.restarts).toBe(0);
    expect(timesS(events).at(-1)).toBeCloseTo(11.9, 9);
  });

  it("a file's clock that runs backwards is a gap, and time goes on", () => {
    const { events } = assemble(
      (d) => [0, 1, 2, 3, 4, 0, 1, 2].map((s) => d.line(s * 1e6, sample(null, s * 1e6))),
      { clockWrapUs: null, sequenceWrap: null },
    );
    expect(timesS(events)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect(gaps(events)).toMatchObject([{ cause: 'clock-backwards', fromS: 4, toS: 5 }]);
  });

  it('brings a key press to reading time by the smallest delay known: 12.000 s, not 12.003 s', () => {
    const { events } = assemble((d) => [
      ...steady(d, 0, 121),
      { kind: 'mark', arrivedUs: 12_053_000, by: 'key', mark: { kind: 'press-closed' } },
    ]);
    expect(events.at(-1)).toEqual({ kind: 'mark', timeS: 12.05, mark: { kind: 'press-closed' } });
  });

  it('gives a contact edge its own device time, also across the wrap and before the first reading', () => {
    const start = 2 ** 32 - 250_000;
    const { events } = assemble((d) => [
      d.line(1_000, { kind: 'contact', closed: false, deviceTimeUs: start - 40_000 }),
      ...steady(d, 0, 3, start),
      d.line(330_000, { kind: 'contact', closed: true, deviceTimeUs: 70_000 }),
      ...steady(d, 3, 2, start),
    ]);
    expect(events.filter((event) => event.kind === 'contact')).toEqual([
      { kind: 'contact', timeS: -0.04, closed: false },
      { kind: 'contact', timeS: 0.32, closed: true },
    ]);
  });

  it('a clock that leaps forward without a host that waited is a restart, by arrival', () => {
    // Counter began anew at a higher count; no sequence numbers tell it.
    const { events, assembler } = assemble((d) => [
      ...Array.from({ length: 20 }, (_, i) => d.line(i * 1e5, sample(null, i * 1e5))),
      ...Array.from({ length: 3 }, (_, i) => d.line(3e6 + i * 1e5, sample(null, 900e6 + i * 1e5))),
    ]);
    expect(gaps(events)).toEqual([
      { kind: 'gap', fromS: 1.9, toS: 3, cause: 'reader-restarted', lostSamples: null },
    ]);
    expect(timesS(events).slice(-3)).toEqual([3, 3.1, 3.2]);
    expect(assembler.counts.restarts).toBe(1);
  });

  it('samples missing while the host clock stood still, without a word from the host, are a sleep of 20 s', () => {
    const { events } = assemble((d) => [
      ...steady(d, 0, 20),
      ...Array.from({ length: 3 }, (_, i) => d.line(2_003_000 + i * 1e5, sample(220 + i, 22e6 + i * 1e5))),
    ]);
    expect(gaps(events)).toEqual([
      { kind: 'gap', fromS: 1.9, toS: 22, cause: 'host-asleep', lostSamples: 200 },
    ]);
  });

  it('a sleep through which the reader lost nothing is no gap', () => {
    const { events } = assemble((d) => [
      ...steady(d, 0, 20),
      host(1_950_000, 'host-slept', '4.000 s, clock stood still 0.000 s'),
      ...steady(d, 20, 3),
    ]);
    expect(gaps(events)).toEqual([]);
  });

  it('a reader that was silent for 100 min keeps its time over a clock that wraps every 71.6 min', () => {
    const silenceUs = 6_000_000_000;
    const { events } = assemble((d) => [
      ...steady(d, 0, 20),
      ...Array.from({ length: 3 }, (_, i) =>
        d.line(1_903_000 + silenceUs + i * 1e5, sample(20 + i, (1_900_000 + silenceUs + i * 1e5) % 2 ** 32)),
      ),
    ]);
    expect(gaps(events)).toMatchObject([{ cause: 'silence', fromS: 1.9, toS: 6001.9 }]);
    expect(timesS(events).at(-1)).toBeCloseTo(6002.1, 9);
  });

  it('an unplugged reader whose counter began anew higher than before goes on by arrival', () => {
    const { events } = assemble((d) => [
      ...steady(d, 0, 50),
      host(5_100_000, 'port-lost'),
      host(8_000_000, 'port-back'),
      ...steady(d, 3, 3, 60_000_000, 8_400_000),
    ]);
    expect(gaps(events)).toEqual([
      { kind: 'gap', fromS: 4.9, toS: 8.7, cause: 'unplugged', lostSamples: null },
    ]);
  });

  it('a contact edge just after a restart waits for the next sample and shares its clock', () => {
    const { events } = assemble((d) => [
      ...steady(d, 0, 50),
      d.line(6_000_000, { kind: 'started' }),
      d.line(6_450_000, { kind: 'contact', closed: true, deviceTimeUs: 150_000 }),
      ...steady(d, 0, 3, 200_000, 6_500_000),
    ]);
    expect(events.filter((event) => event.kind === 'contact')).toEqual([
      { kind: 'contact', timeS: 6.45, closed: true },
    ]);
  });

  it('counts an overflow that the reader tells as a gap even where the numbers run on', () => {
    const { events, assembler } = assemble((d) => [
      ...steady(d, 0, 20),
      d.line(1_950_000, { kind: 'overflow', lostSamples: 7 }),
      ...steady(d, 20, 3),
    ]);
    expect(gaps(events)).toMatchObject([{ cause: 'lost-samples', lostSamples: 7 }]);
    expect(assembler.counts.lostSamples).toBe(7);
  });

  it('follows a change from 10 Hz to one reading in 2 s within ten readings', () => {
    const { events } = assemble((d) => [
      ...steady(d, 0, 50),
      ...Array.from({ length: 40 }, (_, i) => d.line(5e6 + i * 2e6, sample(50 + i, 5e6 + i * 2e6))),
    ]);
    expect(gaps(events).length).toBeLessThan(10);
    expect(gaps(events).every((gap) => gap.kind === 'gap' && gap.toS < 25)).toBe(true);
  });

  it('converts emf by the type that the reader states: type K, 9,742.5 µV over a 20 °C cold junction is 259.5 °C', () => {
    // ITS-90 type K table (NIST Monograph 175): E(20 °C) = 798 µV; E(259 °C) = 10,520 µV, E(260 °C) = 10,561 µV.
    const emf: WireEvent = {
      kind: 'sample',
      sequence: null,
      deviceTimeUs: null,
      channels: [{ kind: 'emf', emfUv: 10_540.5 - 798, coldJunctionC: 20 }],
    };
    const named: WireEvent = { kind: 'identity', identity: { ...nobody, channels: [typeK] } };
    const { events } = assemble((d) => [d.line(0, named), d.line(1, emf)]);
    const value = events.flatMap((event) => (event.kind === 'reading' ? event.reading.values : []))[0];
    if (value?.kind !== 'temperature') throw new Error('no temperature');
    expect(value.temperatureC).toBeCloseTo(259.5, 1);

    const untyped = assemble((d) => [0, 1e6, 4.9e6, 5e6, 6e6].map((us) => d.line(us, emf)));
    expect(untyped.events.map((event) => event.kind)).toEqual([
      'reading',
      'reading',
      'reading',
      'reading',
      'refusal',
      'reading',
    ]);
    expect(untyped.assembler.refusal).toEqual({
      problem: 'thermocouple-type-unknown',
      detail: expect.stringContaining('channel 1 '),
    });
    expect(untyped.assembler.latestReading?.values).toEqual([{ kind: 'missing' }]);

    // A reader that was sending already names its type a moment later: nothing to refuse.
    const late = assemble((d) => [d.line(0, emf), d.line(1e5, named), d.line(6e6, emf)]);
    expect(late.events.map((event) => event.kind)).toEqual(['reading', 'identity', 'reading']);
    expect(late.assembler.refusal).toBeNull();

    const short = assemble((d) => [d.line(0, emf)]);
    expect(short.events.map((event) => event.kind)).toEqual(['reading', 'refusal']);
  });

  it('never lets NaN or infinity through as a temperature', () => {
    const { events } = assemble((d) =>
      [Number.NaN, Infinity, -Infinity, -300].map((t, i) => d.line(i * 1e5, sample(i, i * 1e5, t))),
    );
    const kinds = events.flatMap((event) =>
      event.kind === 'reading' ? event.reading.values.map((v) => v.kind) : [],
    );
    expect(kinds).toEqual(['missing', 'missing', 'missing', 'fault']);
  });
});

const nobody = {
  name: null,
  firmwareVersion: null,
  serialNumber: null,
  channels: [],
  ratesHz: [],
  hasContact: false,
};
const typeK = { number: 1, name: null, thermocoupleType: 'K', sends: 'emf', resolutionC: null } as const;
