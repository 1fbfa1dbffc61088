import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatContact,
  formatErrorReply,
  formatIdentity,
  formatNote,
  formatOverflow,
  formatReply,
  formatSample,
  formatStarted,
  PROTOCOL_LONGEST_LINE,
} from '../../../../src/core/wire/protocol/index.ts';
import type { ReaderIdentity, ThermocoupleType } from '../../../../src/core/wire/WireEvent.ts';
import { arbitrarySample } from './arbitrary-sample.ts';
import { decodeLine } from './decode-lines.ts';

describe('what a formatter writes, the decoder reads', () => {
  test('any sample of 1 to 16 channels (property)', () => {
    fc.assert(
      fc.property(arbitrarySample, (sample) => {
        const line = formatSample(sample);
        expect(line.length).toBeLessThanOrEqual(PROTOCOL_LONGEST_LINE);
        const [event, ...more] = decodeLine(line);
        expect(more).toEqual([]);
        // -0 is written "-0.00"; equal as a number.
        expect(JSON.parse(JSON.stringify(event))).toEqual(JSON.parse(JSON.stringify(sample)));
      }),
      { numRuns: 2000 },
    );
  });

  test('decimals as asked for: 4 of a °C, 3 of a µV', () => {
    const channels = [
      { kind: 'temperature', temperatureC: 231.2625 },
      { kind: 'emf', emfUv: 8384.625, coldJunctionC: 24.3125 },
    ] as const;
    const line = formatSample(
      { sequence: 7, deviceTimeUs: 9, channels },
      { temperatureDecimals: 4, emfDecimals: 3 },
    );
    expect(line.slice(0, -5)).toBe('sample 7 9 231.2625 8384.625@24.3125');
    expect(decodeLine(line)).toEqual([{ kind: 'sample', sequence: 7, deviceTimeUs: 9, channels }]);
  });

  test('the longest sample, 16 channels of emf with all digits, keeps to 500 characters: 428', () => {
    const channels = Array.from(
      { length: 16 },
      () => ({ kind: 'emf', emfUv: 100_000, coldJunctionC: -55 }) as const,
    );
    const longest = { sequence: 65_535, deviceTimeUs: 2 ** 32 - 1, channels };
    const line = formatSample(longest, { temperatureDecimals: 6, emfDecimals: 6 });
    // "sample 65535 4294967295" 23, 16 fields " 100000.000000@-55.000000" of 25, seal 5.
    expect(line).toHaveLength(23 + 16 * 25 + 5);
    expect(line.length).toBeLessThanOrEqual(PROTOCOL_LONGEST_LINE);
    expect(decodeLine(line)).toEqual([{ kind: 'sample', ...longest }]);
  });

  test('numbers are the doubles nearest to their digits, as the language itself reads them (property)', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2_731_500, max: 30_000_000 }), (tenThousandths) => {
        const written = (tenThousandths / 10_000).toFixed(4);
        const line = formatSample(
          {
            sequence: 0,
            deviceTimeUs: 0,
            channels: [{ kind: 'temperature', temperatureC: Number(written) }],
          },
          { temperatureDecimals: 4 },
        );
        expect(line).toContain(` ${written}#`);
        expect(decodeLine(line)).toMatchObject([{ channels: [{ temperatureC: Number(written) + 0 }] }]);
      }),
    );
  });

  test('any identity (property)', () => {
    const text = fc.option(fc.stringMatching(/^[a-zA-Z0-9._=-]{1,30}$/).filter((value) => value !== '-'));
    const types = fc.constantFrom<(ThermocoupleType | null)[]>('K', 'J', 'T', 'E', 'N', 'R', 'S', 'B', null);
    const identity = fc
      .record({
        name: text,
        firmwareVersion: text,
        serialNumber: text,
        types: fc.array(types, { minLength: 1, maxLength: 16 }),
        sends: fc.constantFrom('temperature' as const, 'emf' as const),
        resolutionC: fc.option(fc.constantFrom(0.0625, 0.1, 0.25)),
        ratesHz: fc.uniqueArray(fc.constantFrom(0.1, 0.5, 1, 2.5, 10, 1000), { minLength: 1 }),
        hasContact: fc.boolean(),
      })
      .map(({ types: list, sends, resolutionC, ...rest }): ReaderIdentity & { rateHz: number } => ({
        ...rest,
        rateHz: rest.ratesHz[0] as number,
        channels: list.map((thermocoupleType, index) => ({
          number: index + 1,
          name: null,
          thermocoupleType,
          sends,
          resolutionC,
        })),
      }));
    fc.assert(
      fc.property(identity, (one) => {
        expect(decodeLine(formatIdentity(one))).toEqual([{ kind: 'identity', identity: one }]);
      }),
    );
  });

  test('contact, started, overflow, note and replies', () => {
    expect(decodeLine(formatContact({ closed: true, deviceTimeUs: 0 }))).toEqual([
      { kind: 'contact', closed: true, deviceTimeUs: 0 },
    ]);
    expect(decodeLine(formatStarted('brown-out'))).toEqual([{ kind: 'started' }]);
    expect(decodeLine(formatOverflow(70_000))).toEqual([{ kind: 'overflow', lostSamples: 65_535 }]);
    expect(decodeLine(formatNote('coil 3'))).toEqual([{ kind: 'remark', text: 'coil 3' }]);
    expect(decodeLine(formatReply('rate 10'))).toEqual([{ kind: 'reply', accepted: true, text: 'rate 10' }]);
    expect(decodeLine(formatErrorReply('unknown', null))).toEqual([
      { kind: 'reply', accepted: false, text: 'unknown -' },
    ]);
  });
});

describe('formatters refuse what a line cannot carry', () => {
  const sampleWith = (
    channels: Parameters<typeof formatSample>[0]['channels'],
    sequence = 0,
    deviceTimeUs = 0,
  ) => formatSample({ sequence, deviceTimeUs, channels });
  const celsius = (temperatureC: number) => ({ kind: 'temperature', temperatureC }) as const;
  const refusal = expect.objectContaining({ code: 'line-not-sendable' });

  test.each([
    ['NaN °C', () => sampleWith([celsius(Number.NaN)])],
    ['3000.1 °C', () => sampleWith([celsius(3000.1)])],
    ['-273.2 °C', () => sampleWith([celsius(-273.2)])],
    ['sequence 65536', () => sampleWith([celsius(1)], 65_536)],
    ['time 2^32', () => sampleWith([celsius(1)], 0, 2 ** 32)],
    ['time 0.5', () => sampleWith([celsius(1)], 0, 0.5)],
    ['no channel', () => sampleWith([])],
    ['17 channels', () => sampleWith(Array.from({ length: 17 }, () => celsius(1)))],
    ['a # in a note', () => formatNote('a#b')],
    ['a ° in a note', () => formatNote('31 °C')],
    ['a note of 491 characters', () => formatNote('x'.repeat(491))],
  ])('%s', (_, write) => {
    expect(write).toThrow(refusal);
  });
});
