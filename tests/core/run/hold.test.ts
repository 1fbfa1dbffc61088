import { describe, expect, it } from 'vitest';
import { closedKey, EXAMPLE, makeReadings, openedKey, trueSoak, withEvents } from './make-heating.ts';
import { track } from './track.ts';

const crossS = 20 + trueSoak(EXAMPLE, 176.67);
const dip = (fromS: number, toS: number) => (timeS: number, valueC: number) =>
  timeS >= fromS && timeS < toS ? 170 : valueC;
const hold = (setup: Parameters<typeof makeReadings>[0], rules = {}, openedS = 260) =>
  track(
    withEvents(makeReadings({ openedS, endS: openedS + 40, ...setup }), closedKey(20), openedKey(openedS)),
    rules,
  );

describe('hold', () => {
  it('counts from the crossing at 73.5 s to the opening at 200 s: 126.5 s', () => {
    const { results, told } = hold({}, {}, 200);
    expect(results[0]!.hold!.countedS).toBeCloseTo(200 - crossS, 0);
    expect(results[0]!.hold!.verified).toBe(true);
    const done = told.find(({ event }) => event.kind === 'hold-done')!;
    expect(done.atS).toBeGreaterThan(crossS + 119.5);
    expect(done.atS).toBeLessThan(crossS + 120.5);
  });

  it('a dip of 1 s under a limit of 2 s changes nothing', () => {
    const { results } = hold({ alter: dip(100, 101) });
    expect(results[0]!.hold!.dips).toEqual([]);
    expect(results[0]!.hold!.countedS).toBeCloseTo(260 - crossS, 0);
  });

  it('a dip of 5 s restarts the hold by default', () => {
    const { results, told } = hold({ alter: dip(100, 105) });
    const [one] = results[0]!.hold!.dips;
    expect(one!.toS - one!.fromS).toBeCloseTo(5, 0);
    expect(results[0]!.hold!.countedS).toBeCloseTo(260 - 105, 0);
    expect(results[0]!.hold!.longestUnbrokenS).toBeCloseTo(155, 0);
    expect(told.some(({ event }) => event.kind === 'dip')).toBe(true);
    expect(results[0]!.reasons).toMatchObject([{ code: 'hold-dipped', severity: 'note' }]);
    expect(results[0]!.lowestAfterCrossingC).toBeCloseTo(170, 0);
  });

  it('a dip of 5 s pauses the hold where the recipe says so', () => {
    const { results } = hold({ alter: dip(100, 105) }, { dip: 'pauses' });
    expect(results[0]!.hold!.countedS).toBeCloseTo(260 - crossS - 5, 0);
  });

  it('a gap of 8 s inside the hold is not counted and the hold is not verified', () => {
    const { results } = hold({ alter: (t, v) => (t > 100 && t < 108 ? 'lost' : v) });
    expect(results[0]!.hold!.verified).toBe(false);
    expect(results[0]!.hold!.countedS).toBeCloseTo(260 - crossS - 8, 0);
    expect(results[0]!.verdict).toBe('good');
  });

  it('opened after 60 s of 120 s hold: suspect, by key', () => {
    const { results } = hold({}, {}, crossS + 60);
    expect(results[0]!.verdict).toBe('suspect');
    expect(results[0]!.reasons[0]).toMatchObject({
      code: 'opened-early',
      facts: { by: 'key', wantedS: 120 },
    });
  });

  it('opened after 60 s without a mark of it: suspect, by the fall of the trace', () => {
    const { results } = track(withEvents(makeReadings({ openedS: 130, endS: 260 }), closedKey(20)));
    expect(results[0]!.reasons[0]).toMatchObject({ code: 'opened-early', facts: { by: 'fall' } });
    expect(Math.abs(results[0]!.openedS! - 130)).toBeLessThan(1.5);
  });

  it('a record that ends after 60 s of hold is no early opening', () => {
    const { results } = track(withEvents(makeReadings({ endS: crossS + 60 }), closedKey(20)));
    expect(results[0]!.verdict).toBe('good');
    expect(results[0]!.reasons).toMatchObject([
      { code: 'hold-not-verified', facts: { why: 'record-ended' } },
    ]);
  });

  it('a hold of 0 s is done at the crossing', () => {
    const { results } = hold({}, { holdS: 0 });
    expect(results[0]!.hold!.verified).toBe(true);
    expect(results[0]!.verdict).toBe('good');
  });

  it('a swing of ±1.5 °C with 60 s is no opening', () => {
    const { told } = hold(
      { endS: 500, alter: (t, v) => v + 1.5 * Math.sin((2 * Math.PI * t) / 60) },
      {},
      480,
    );
    expect(told.filter(({ event, atS }) => event.kind === 'opening-hinted' && atS < 480)).toEqual([]);
  });
});
