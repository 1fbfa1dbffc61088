import fc from 'fast-check';
import type { ChannelValue, SampleEvent } from '../../../../src/core/wire/WireEvent.ts';

const hundredths = (least: number, most: number) =>
  fc.integer({ min: least * 100, max: most * 100 }).map((value) => value / 100);

export const arbitraryChannel: fc.Arbitrary<ChannelValue> = fc.oneof(
  {
    weight: 4,
    arbitrary: hundredths(-273, 3000).map((temperatureC) => ({ kind: 'temperature' as const, temperatureC })),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('emf' as const),
      emfUv: fc.integer({ min: -200_000, max: 1_000_000 }).map((value) => value / 10),
      coldJunctionC: hundredths(-55, 125),
    }),
  },
  fc.record({
    kind: fc.constant('fault' as const),
    fault: fc.constantFrom(
      'open-circuit' as const,
      'short-to-ground' as const,
      'short-to-supply' as const,
      'over-range' as const,
      'cold-junction' as const,
      'unspecified' as const,
    ),
  }),
  fc.constant({ kind: 'missing' as const }),
);

/** Samples whose values have at most as many decimals as a line is written with by default. */
export const arbitrarySample: fc.Arbitrary<SampleEvent & { sequence: number; deviceTimeUs: number }> =
  fc.record({
    kind: fc.constant('sample' as const),
    sequence: fc.integer({ min: 0, max: 65_535 }),
    deviceTimeUs: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
    channels: fc.array(arbitraryChannel, { minLength: 1, maxLength: 16 }),
  });
