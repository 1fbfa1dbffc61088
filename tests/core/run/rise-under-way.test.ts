import { expect, it } from 'vitest';
import type { StreamEvent } from '../../../src/core/reading/StreamEvent.ts';
import { contact, EXAMPLE, makeReadings, trueSoak, withEvents } from './make-heating.ts';
import { track } from './track.ts';

/** The same stream begun `lateS` after the press closed at 20 s, its clock set to zero there. */
const begunLate = (events: readonly StreamEvent[], lateS: number): readonly StreamEvent[] =>
  events.flatMap((event) =>
    event.kind === 'reading' && event.reading.timeS >= 20 + lateS
      ? [{ ...event, reading: { ...event.reading, timeS: event.reading.timeS - 20 - lateS } }]
      : [],
  );
const shifted = (events: readonly StreamEvent[], byS: number): readonly StreamEvent[] =>
  events.map((event) =>
    event.kind === 'reading'
      ? { ...event, reading: { ...event.reading, timeS: event.reading.timeS + byS } }
      : event,
  );

const first = makeReadings({ closedS: 20, openedS: 230, endS: 290 });

it.each([5, 15, 30])(
  'a record begun %i s after closing: a flagged run, or none where it goes on after an interruption',
  (lateS) => {
    const late = begunLate(first, lateS);
    const [asRun] = track(late).results;
    expect(asRun?.reasons.map(({ code }) => code)).toContain('from-onset');
    expect(track(late, { riseUnderWay: 'left-out' }).results).toEqual([]);
  },
);

// Soak time by algebra, as for any other run.
it('the next closing after the interrupted one is a run, marked or not', () => {
  const late = begunLate(first, 10);
  const next = shifted(makeReadings({ closedS: 200, openedS: 400, endS: 420 }), 300).filter(
    (event) => event.kind === 'reading' && event.reading.timeS > 320,
  );
  const rules = { riseUnderWay: 'left-out' } as const;
  const unmarked = track([...late, ...next], rules).results;
  expect(unmarked).toHaveLength(1);
  expect(unmarked[0]?.crossing?.timeS).toBeCloseTo(500 + trueSoak(EXAMPLE, 176.67), 1);
  const marked = track(withEvents([...late, ...next], contact(500, true)), rules).results;
  expect(marked.map(({ soakTimeS }) => soakTimeS)).toEqual([expect.closeTo(trueSoak(EXAMPLE, 176.67), 1)]);
});

it('from a cold start an unmarked run is found as ever', () => {
  const [ever] = track(first).results;
  expect(track(first, { riseUnderWay: 'left-out' }).results).toEqual([ever]);
});
