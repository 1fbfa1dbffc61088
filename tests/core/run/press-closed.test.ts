import { describe, expect, it } from 'vitest';
import type { RunReasonCode, RunResult } from '../../../src/core/run/RunResult.ts';
import {
  closedKey,
  contact,
  EXAMPLE,
  makeReadings,
  openedKey,
  RULES,
  trueSoak,
  withEvents,
} from './make-heating.ts';
import { track } from './track.ts';

const codes = (result: RunResult | undefined): RunReasonCode[] => result!.reasons.map((one) => one.code);
const delayed = { ...EXAMPLE, delayS: 2 };

describe('press closed', () => {
  it('goes by the contact before the key, keeps both and the onset', () => {
    const events = withEvents(makeReadings({ heating: delayed }), contact(20, true), closedKey(20.4));
    const { pressClosed } = track(events).results[0]!;
    expect(pressClosed!.by).toBe('contact');
    expect(pressClosed!.timeS).toBe(20);
    expect(pressClosed!.all.map((one) => one.by)).toEqual(['contact', 'key', 'onset']);
    expect(pressClosed!.disagreementS).toBeCloseTo(0.4, 9);
  });

  it('flags contact and key 3 s apart against a limit of 2 s', () => {
    const events = withEvents(makeReadings({ heating: delayed }), contact(20, true), closedKey(23));
    const [result] = track(events).results;
    expect(codes(result)).toContain('marks-disagree');
    expect(result!.verdict).toBe('suspect');
  });

  it('takes an option of 20 s before the onset', () => {
    const [result] = track(makeReadings({ heating: delayed }), { closedAtS: 20 }).results;
    expect(result!.pressClosed).toMatchObject({ by: 'option', timeS: 20 });
    expect(result!.soakTimeS).toBeCloseTo(trueSoak(delayed, 176.67), 1);
    expect(result!.verdict).toBe('good');
  });

  it('without any mark takes the onset of the rise at 22 s, says so as a note and stays good', () => {
    const [result] = track(makeReadings({ heating: delayed })).results;
    expect(result!.pressClosed!.by).toBe('onset');
    expect(Math.abs(result!.pressClosed!.timeS - 22)).toBeLessThan(0.2);
    expect(result!.reasons).toMatchObject([{ code: 'from-onset', severity: 'note' }]);
    expect(result!.verdict).toBe('good');
  });

  it('opens the run where the rise began when the key comes 8 s late, and says late mark', () => {
    const events = withEvents(makeReadings({ heating: delayed }), closedKey(30));
    const { results } = track(events);
    expect(results).toHaveLength(1);
    expect(results[0]!.pressClosed!.by).toBe('key');
    expect(codes(results[0])).toContain('late-mark');
    const late = results[0]!.reasons.find((one) => one.code === 'late-mark')!;
    expect(Math.abs((late.facts.lateS as number) - 8)).toBeLessThan(0.2);
  });

  it('a mark 0.3 s after the closing is no late mark', () => {
    expect(codes(track(withEvents(makeReadings({ heating: delayed }), closedKey(20.3))).results[0])).toEqual(
      [],
    );
  });

  it('ignores a repeated key within 1 s', () => {
    const { results } = track(withEvents(makeReadings({}), closedKey(20), closedKey(20.8)));
    expect(results).toHaveLength(1);
    expect(results[0]!.pressClosed!.timeS).toBe(20);
  });

  it('takes back a mark: the run is gone, the next mark opens it', () => {
    const undo = { kind: 'mark', timeS: 12, mark: { kind: 'undo', what: 'press-closed' } } as const;
    const { results } = track(withEvents(makeReadings({}), closedKey(10), undo, closedKey(20)));
    expect(results).toHaveLength(1);
    expect(results[0]!.pressClosed!.timeS).toBe(20);
    expect(results[0]!.runNumber).toBe(1);
  });

  it('takes back an opening within 5 s: the run goes on', () => {
    const undo = { kind: 'mark', timeS: 63, mark: { kind: 'undo', what: 'opened' } } as const;
    const events = withEvents(
      makeReadings({ openedS: 200 }),
      closedKey(20),
      openedKey(60),
      undo,
      openedKey(200),
    );
    const { results } = track(events);
    expect(results).toHaveLength(1);
    expect(results[0]!.openedS).toBe(200);
    expect(Math.abs(results[0]!.soakTimeS! - trueSoak(EXAMPLE, 176.67))).toBeLessThan(0.1);
  });

  it('takes a contact that opens for 0.2 s as a bounce', () => {
    const events = withEvents(
      makeReadings({ openedS: 200 }),
      contact(20, true),
      contact(60, false),
      contact(60.2, true),
      contact(200, false),
    );
    const { results } = track(events);
    expect(results).toHaveLength(1);
    expect(results[0]!.openedS).toBe(200);
  });

  it('a next closing ends the run', () => {
    const first = makeReadings({ openedS: 200, endS: 260 });
    const { results } = track(withEvents(first, closedKey(20), closedKey(250)));
    expect(results.map((one) => one.runNumber)).toEqual([1, 2]);
    expect(results[0]!.endedS).toBe(250);
    expect(results[0]!.openedS).toBeGreaterThan(198);
    expect(results[0]!.openedS).toBeLessThan(201);
    expect(results[0]!.verdict).toBe('good');
    expect(results[1]!.verdict).toBe('unusable');
  });

  it('is not opened by handling: probe laid on a part 30 °C warmer, mark 30 s later', () => {
    const events = withEvents(
      makeReadings({
        closedS: 60,
        endS: 200,
        alter: (t, v) => (t < 30 ? v - 15 * Math.exp(-Math.max(0, t - 25)) : v),
      }),
      closedKey(60),
    );
    const { results } = track(events);
    expect(results).toHaveLength(1);
    expect(codes(results[0])).not.toContain('late-mark');
    expect(results[0]!.pressClosed!.timeS).toBe(60);
  });

  it.each([0.1, 0.25, 1])('a flat baseline in steps of %f °C is no onset over an hour', (stepC) => {
    const flat = makeReadings({ closedS: 1e9, endS: 3600, stepC, noiseC: stepC / 5, rateHz: 4 });
    expect(track(flat).told).toEqual([]);
  });

  it('100 single spikes of +100 °C on a flat baseline are no onset', () => {
    const flat = makeReadings({
      closedS: 1e9,
      endS: 600,
      alter: (t, v) => (Math.abs((t % 6) - 3) < 0.04 ? v + 100 : v),
    });
    expect(track(flat).results).toEqual([]);
  });

  it('onset lies within three standard uncertainties (and 0.15 s) of the rise in 40 seeded runs', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { results } = track(makeReadings({ heating: delayed, seed, endS: 100 }));
      const { timeS, standardUncertaintyS } = results[0]!.onset!;
      expect(Math.abs(timeS - 22)).toBeLessThan(Math.max(0.15, 3 * standardUncertaintyS));
    }
  });

  it('a record that begins inside the rise at 80 °C is suspect', () => {
    const late = makeReadings({}).filter((one) => one.kind === 'reading' && one.reading.timeS > 33);
    const [result] = track(late, { ambientC: null }).results;
    expect(result!.verdict).toBe('suspect');
    expect(codes(result)).toContain('from-onset');
  });

  it('several runs in one unmarked log are told apart', () => {
    const one = makeReadings({ openedS: 200, endS: 320 });
    const shifted = makeReadings({ openedS: 200, endS: 320, seed: 9 }).map((event) =>
      event.kind === 'reading'
        ? { ...event, reading: { ...event.reading, timeS: event.reading.timeS + 321 } }
        : event,
    );
    const { results } = track([...one, ...shifted]);
    expect(results.map((each) => each.runNumber)).toEqual([1, 2]);
    for (const each of results)
      expect(Math.abs(each.soakTimeS! - trueSoak(EXAMPLE, RULES.targetC))).toBeLessThan(0.25);
  });

  it('uncertainty of the soak time joins crossing and key: √(u² + 0.15²)', () => {
    const [result] = track(withEvents(makeReadings({}), closedKey(20))).results;
    expect(result!.soakTimeStandardUncertaintyS).toBeCloseTo(
      Math.hypot(0.15, result!.crossing!.standardUncertaintyS),
      12,
    );
  });
});
