import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { OperatorMark, ReadingValue, StreamEvent } from '../../../src/core/reading/StreamEvent.ts';
import { createRunTracker } from '../../../src/core/run/create-run-tracker.ts';
import type { RunEvent } from '../../../src/core/run/RunEvent.ts';
import { closedKey, makeReadings, openedKey, RULES, withEvents } from './make-heating.ts';
import { track } from './track.ts';

/** Fails on any number that is not finite, anywhere in a value. */
function expectFinite(value: unknown, path = ''): void {
  if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
  else if (value !== null && typeof value === 'object')
    for (const [key, inner] of Object.entries(value)) expectFinite(inner, `${path}.${key}`);
}

describe('run tracker, causality', () => {
  const events = withEvents(
    makeReadings({ openedS: 200, endS: 240, alter: (t, v) => (t > 44 && t < 45 ? 210 : v) }),
    closedKey(20),
    openedKey(200),
  );

  it('what is told at a reading does not depend on later readings: every prefix tells the same', () => {
    const told = (upTo: number): RunEvent[][] => {
      const tracker = createRunTracker({ rules: RULES, roles: ['bond-line'] });
      return events.slice(0, upTo).map((event) => [...tracker.accept(event)]);
    };
    const whole = told(events.length);
    for (let upTo = 1; upTo < events.length; upTo += 97) expect(told(upTo)).toEqual(whole.slice(0, upTo));
  });

  it('the same events give the same results to the last digit', () => {
    expect(JSON.stringify(track(events).results)).toBe(JSON.stringify(track(events).results));
  });

  it('reading the state changes nothing', () => {
    const tracker = createRunTracker({ rules: RULES, roles: ['bond-line'] });
    const told: RunEvent[] = [];
    for (const event of events) {
      expectFinite(tracker.state);
      told.push(...tracker.accept(event));
    }
    told.push(...tracker.finish());
    expect(JSON.stringify(told)).toBe(JSON.stringify(track(events).told.map(({ event }) => event)));
  });

  it('phases follow one another: waiting, heating, crossed, hold-done, opened, waiting', () => {
    const tracker = createRunTracker({ rules: RULES, roles: ['bond-line'] });
    const phases: string[] = [];
    for (const event of withEvents(
      makeReadings({ openedS: 200, endS: 240 }),
      closedKey(20),
      openedKey(200),
    )) {
      tracker.accept(event);
      if (phases[phases.length - 1] !== tracker.state.phase) phases.push(tracker.state.phase);
    }
    expect(phases).toEqual(['waiting', 'heating', 'crossed', 'hold-done', 'opened', 'waiting']);
  });
});

describe('run tracker, any events', () => {
  const value: fc.Arbitrary<ReadingValue> = fc.oneof(
    {
      weight: 6,
      arbitrary: fc
        .double({ min: -50, max: 400, noNaN: true })
        .map((temperatureC) => ({ kind: 'temperature' as const, temperatureC })),
    },
    fc.constantFrom<ReadingValue>({ kind: 'missing' }, { kind: 'fault', fault: 'open-circuit' }),
    fc
      .constantFrom(Number.NaN, Number.POSITIVE_INFINITY, 1e300, -1e300)
      .map((temperatureC) => ({ kind: 'temperature' as const, temperatureC })),
  );
  const mark = fc.constantFrom<OperatorMark>(
    { kind: 'press-closed' },
    { kind: 'opened' },
    { kind: 'spoilt', reason: 'dropped' },
    { kind: 'note', text: 'x' },
    { kind: 'undo', what: 'press-closed' },
    { kind: 'undo', what: 'opened' },
    { kind: 'undo', what: 'spoilt' },
  );
  const step = fc.oneof(
    {
      weight: 8,
      arbitrary: fc.record({
        what: fc.constant('readings' as const),
        dt: fc.constantFrom(0, 0.001, 0.1, 1, 10, 1000),
        count: fc.integer({ min: 1, max: 40 }),
        from: value,
        to: fc.double({ min: -50, max: 400, noNaN: true }),
      }),
    },
    fc.record({ what: fc.constant('mark' as const), mark }),
    fc.record({ what: fc.constant('contact' as const), closed: fc.boolean() }),
    fc.record({ what: fc.constant('gap' as const) }),
  );

  it('never throws, never tells a number that is not finite, and finishes what it opened', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), fc.constantFrom(null, 3, -5), (steps, closedAtS) => {
        const tracker = createRunTracker({
          rules: { ...RULES, closedAtS },
          roles: ['bond-line', 'bond-line-outer', 'upper-platen'],
        });
        const told: RunEvent[] = [];
        let timeS = 0;
        for (const one of steps) {
          if (one.what === 'readings')
            for (let i = 0; i < one.count; i++) {
              timeS += one.dt;
              const moving: ReadingValue = { kind: 'temperature', temperatureC: one.to * (i / one.count) };
              const values = [i % 7 === 3 ? one.from : moving, one.from, moving];
              told.push(...tracker.accept({ kind: 'reading', reading: { timeS, arrivedUs: 0, values } }));
            }
          else {
            const event: StreamEvent =
              one.what === 'mark'
                ? { kind: 'mark', timeS, mark: one.mark }
                : one.what === 'contact'
                  ? { kind: 'contact', timeS, closed: one.closed }
                  : { kind: 'gap', fromS: timeS, toS: timeS + 3, cause: 'unplugged', lostSamples: null };
            told.push(...tracker.accept(event));
          }
          expectFinite(tracker.state);
        }
        told.push(...tracker.finish());
        expectFinite(told);
        expect(tracker.state.phase).toBe('waiting');
      }),
      { numRuns: 300 },
    );
  });

  it('survives every rule at its limits', () => {
    for (const targetC of [-300, 0, 24, 232.2, 1e6])
      for (const holdS of [0, 1e9])
        for (const longestDipS of [0, 1e9])
          for (const rateHz of [0.05, 10]) {
            const events = withEvents(
              makeReadings({ openedS: 200, endS: 240, rateHz }),
              closedKey(20),
              openedKey(200),
            );
            const { results } = track(events, { targetC, holdS, longestDipS, closingDisagreementLimitS: 0 });
            expectFinite(results);
            expect(results).toHaveLength(1);
          }
  });

  it('no channel on the bond line: a mark still gives an unusable run, nothing throws', () => {
    const events = withEvents(makeReadings({}), closedKey(20));
    const { results } = track(events, {}, ['upper-platen']);
    expect(results[0]!.verdict).toBe('unusable');
  });
});
