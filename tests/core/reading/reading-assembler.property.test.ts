import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createReadingAssembler } from '../../../src/core/reading/create-reading-assembler.ts';
import type { StreamEvent } from '../../../src/core/reading/StreamEvent.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import type { WireEvent } from '../../../src/core/wire/WireEvent.ts';
import { sample, scriptedDecoder } from './scripted-decoder.ts';

const WRAP_US = 2 ** 32;
const figure = fc.oneof(
  fc.integer({ min: 0, max: WRAP_US - 1 }),
  fc.integer({ min: 0, max: 100_000 }),
  fc.constantFrom(Number.NaN, Infinity, -Infinity, -1, 0.5, 1e300),
);
const value = fc.oneof(
  fc.record({ kind: fc.constant('temperature' as const), temperatureC: fc.oneof(fc.double(), figure) }),
  fc.record({
    kind: fc.constant('emf' as const),
    emfUv: fc.oneof(fc.double(), figure),
    coldJunctionC: fc.double(),
  }),
  fc.constant({ kind: 'fault', fault: 'open-circuit' } as const),
  fc.constant({ kind: 'missing' } as const),
);
const wireEvent: fc.Arbitrary<WireEvent> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant('sample' as const),
      sequence: fc.option(
        fc.oneof(fc.integer({ min: 0, max: 65_535 }), fc.integer({ min: 0, max: 20 }), figure),
      ),
      deviceTimeUs: fc.option(figure),
      channels: fc.array(value, { maxLength: 4 }),
    }),
  },
  fc.record({ kind: fc.constant('contact' as const), closed: fc.boolean(), deviceTimeUs: fc.option(figure) }),
  fc.constant({ kind: 'started' } as const),
  fc.record({ kind: fc.constant('overflow' as const), lostSamples: figure }),
  fc.constant({ kind: 'trouble', trouble: 'garbage', text: '~' } as const),
  fc.constant({
    kind: 'identity',
    identity: {
      name: null,
      firmwareVersion: null,
      serialNumber: null,
      channels: [{ number: 1, name: null, thermocoupleType: 'K', sends: 'emf', resolutionC: null }],
      ratesHz: [],
      hasContact: false,
    },
  } as const),
);
const arrival = fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 0, max: 1_000_000 }) }, figure);
const step = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({
      kind: fc.constant('line' as const),
      afterUs: arrival,
      events: fc.array(wireEvent, { maxLength: 3 }),
    }),
  },
  fc.record({
    kind: fc.constant('host' as const),
    afterUs: arrival,
    event: fc.constantFrom('port-lost', 'port-back', 'host-slept', 'recording-resumed'),
    detail: fc.oneof(fc.string(), fc.constant('30.000 s, clock stood still 29.000 s')),
  }),
  fc.record({ kind: fc.constant('mark' as const), afterUs: arrival }),
);

/** Every number anywhere in the events. */
function numbersIn(data: unknown): number[] {
  if (typeof data === 'number') return [data];
  if (typeof data !== 'object' || data === null) return [];
  return Object.values(data).flatMap(numbersIn);
}

describe('reading assembler, whatever comes', () => {
  for (const wraps of [
    { clockWrapUs: WRAP_US, sequenceWrap: 65_536 },
    { clockWrapUs: null, sequenceWrap: null },
  ])
    it(`never throws, never runs backwards, gives only finite numbers (wrap ${wraps.clockWrapUs})`, () => {
      fc.assert(
        fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
          const decoder = scriptedDecoder(wraps);
          const assembler = createReadingAssembler({ decoder });
          const events: StreamEvent[] = [];
          let arrivedUs = 0;
          for (const one of steps) {
            arrivedUs = Number.isFinite(one.afterUs) ? arrivedUs + one.afterUs : one.afterUs;
            const entry: RecordingEntry =
              one.kind === 'line'
                ? decoder.line(arrivedUs, ...one.events)
                : one.kind === 'host'
                  ? { kind: 'host', arrivedUs, event: one.event as 'port-lost', detail: one.detail }
                  : { kind: 'mark', arrivedUs, by: 'key', mark: { kind: 'press-closed' } };
            events.push(...assembler.accept(entry));
            if (!Number.isFinite(arrivedUs)) arrivedUs = 0;
          }
          events.push(...assembler.finish());
          let latestS = 0;
          for (const event of events) {
            if (event.kind === 'identity') continue;
            const numbers = event.kind === 'reading' ? numbersIn({ ...event.reading }) : numbersIn(event);
            expect(numbers.filter((number) => !Number.isFinite(number))).toEqual([]);
            if (event.kind === 'gap') expect(event.toS).toBeGreaterThanOrEqual(event.fromS);
            if (event.kind !== 'reading') continue;
            expect(event.reading.timeS).toBeGreaterThanOrEqual(latestS);
            latestS = event.reading.timeS;
          }
          expect(numbersIn(assembler.counts).every((count) => count >= 0 && Number.isFinite(count))).toBe(
            true,
          );
          expect(numbersIn(assembler.clock).every(Number.isFinite)).toBe(true);
        }),
        { numRuns: 500 },
      );
    });
});

describe('reading assembler over the wrap', () => {
  /** A stream with lost, repeated and late lines and contact edges, begun at any count of clock and sequence. */
  const trouble = fc.array(
    fc.record({
      what: fc.constantFrom('sample', 'sample', 'sample', 'lost', 'repeated', 'contact', 'late'),
      delayUs: fc.integer({ min: 500, max: 40_000 }),
    }),
    { minLength: 5, maxLength: 120 },
  );
  const play = (
    steps: readonly { what: string; delayUs: number }[],
    startUs: number,
    startSequence: number,
  ): readonly StreamEvent[] => {
    const decoder = scriptedDecoder();
    const assembler = createReadingAssembler({ decoder });
    const events: StreamEvent[] = [];
    const at = (i: number): WireEvent =>
      sample((startSequence + i) % 65_536, (startUs + i * 100_000) % WRAP_US);
    const send = (i: number, delayUs: number, event: WireEvent): void => {
      events.push(...assembler.accept(decoder.line(i * 100_000 + delayUs, event)));
    };
    steps.forEach(({ what, delayUs }, i) => {
      if (what === 'lost') return;
      if (what === 'contact')
        send(i, delayUs, {
          kind: 'contact',
          closed: true,
          deviceTimeUs: (startUs + i * 100_000 - 20_000 + WRAP_US) % WRAP_US,
        });
      send(i, delayUs, at(i));
      if (what === 'repeated') send(i, delayUs, at(i));
      if (what === 'late' && i > 1) send(i, delayUs, at(i - 2));
    });
    events.push(...assembler.finish());
    return events.map((event) =>
      event.kind === 'reading' ? { ...event, reading: { ...event.reading } } : event,
    );
  };

  it('gives the same events wherever clock and sequence wrap', () => {
    fc.assert(
      fc.property(
        trouble,
        fc.integer({ min: 0, max: 12_000_000 }),
        fc.integer({ min: 0, max: 120 }),
        (steps, beforeUs, before) => {
          expect(play(steps, WRAP_US - beforeUs, 65_536 - before)).toEqual(play(steps, 1_000_000, 1000));
        },
      ),
      { numRuns: 300 },
    );
  });

  it('gives every reading its true time from the first, whatever is lost, repeated or late', () => {
    fc.assert(
      fc.property(trouble, fc.integer({ min: 0, max: WRAP_US - 1 }), (steps, startUs) => {
        const sent = steps.flatMap(({ what }, i) => (what === 'lost' ? [] : [i]));
        const times = play(steps, startUs, 7).flatMap((event) =>
          event.kind === 'reading' ? [event.reading.timeS] : [],
        );
        expect(times).toEqual(sent.map((i) => ((i - (sent[0] as number)) * 100_000) / 1e6));
      }),
      { numRuns: 300 },
    );
  });
});
