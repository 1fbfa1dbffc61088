import { describe, expect, it } from 'vitest';
import { bondLineC, DrivenBonding, JOB } from './driven-bonding.ts';

/** Heats from the closing at 10 s on. */
const heating = () => new DrivenBonding({ bondC: (timeS) => bondLineC(timeS - 10) }).until(10);
const elapsedS = ({ state, timeS }: DrivenBonding) => timeS - (state.under?.closedUs ?? Number.NaN) / 1e6;

describe('the contact in production', () => {
  it('starts the time as it closes and ends it as it opens: 176 s of 175 s, hold verified by the readings', () => {
    const driven = heating().contact(true).until(186).contact(false).until(200);
    expect(driven.did).toEqual(['bell', 'log-cycle']);
    expect(driven.cycles[0]).toMatchObject({
      closedBy: 'contact',
      result: 'done',
      hold: 'verified',
      againstBand: 'inside',
    });
    expect(driven.cycles[0]?.dwellHeldS).toBeCloseTo(176, 1);
    expect(driven.cycles[0]?.recordedAtS).toBeTypeOf('number');
  });

  it('closing 0.8 s after the key is the same closing, at the contact’s time', () => {
    const driven = heating().key('c').until(10.8).contact(true).until(20);
    expect(driven.state.under).toMatchObject({ closedBy: 'contact', openedUs: null });
    expect(elapsedS(driven)).toBeCloseTo(20 - 10.8, 1);
    expect(driven.cycles).toEqual([]);
  });

  it('again at 60 s of a closing by key starts nothing anew, and says so', () => {
    const driven = heating().key('c').until(70).contact(true).until(71);
    expect(elapsedS(driven)).toBeCloseTo(61, 0);
    expect(driven.text()).toMatch(/Contact again at 60 s: the time goes on from press closed/);
    expect(driven.cycles).toEqual([]);
  });

  it('bouncing open for 0.2 s goes on with the same closing', () => {
    const driven = heating().contact(true).until(60).contact(false).until(60.2).contact(true).until(61);
    expect(elapsedS(driven)).toBeCloseTo(51, 1);
    expect(driven.state.under).toMatchObject({ openedUs: null });
    driven.until(186).contact(false).until(200);
    expect(driven.cycles).toHaveLength(1);
    expect(driven.cycles[0]).toMatchObject({ result: 'done', hold: 'verified' });
  });

  it('let go within 2 s is a pedal: the time goes on, a second tread changes nothing, O marks the opening', () => {
    const driven = heating().contact(true).until(10.4).contact(false).until(12);
    expect(driven.state.under).toMatchObject({ pedal: true, openedUs: null });
    expect(driven.text()).toMatch(/taken for a pedal/);
    driven.until(40).contact(true).until(40.4).contact(false).until(41);
    expect(elapsedS(driven)).toBeCloseTo(31, 1);
    expect(driven.text()).toMatch(/Contact again at 30 s/);
    driven.until(186).key('o').until(200);
    expect(driven.cycles).toHaveLength(1);
    expect(driven.cycles[0]?.dwellHeldS).toBeCloseTo(176, 0);
    expect(driven.cycles[0]?.flags).not.toContain('opened-early');
  });

  it('of a pedal once more after the hold is done marks the opening, and U takes that back', () => {
    const tread = (driven: DrivenBonding) =>
      driven
        .contact(true)
        .until(driven.timeS + 0.4)
        .contact(false)
        .until(driven.timeS + 0.1);
    // Crossed at 10 + 53.6 s, hold of 120 s done at 183.6 s, dwell of 175 s over at 185 s.
    const driven = tread(heating()).until(190);
    tread(driven);
    expect(driven.state.under?.openedUs).toBeCloseTo(190e6, -5);
    driven.until(192).key('u');
    expect(driven.state.under?.openedUs).toBeNull();
    tread(driven.until(195)).until(203);
    expect(driven.cycles).toHaveLength(1);
    expect(driven.cycles[0]?.dwellHeldS).toBeCloseTo(185, 0);
    expect(driven.cycles[0]).toMatchObject({ result: 'done', hold: 'verified' });
  });

  it('opened for 3 s and closed again is two closings, the first told and logged as opened early', () => {
    const driven = heating().contact(true).until(40).contact(false).until(43).contact(true).until(44);
    expect(driven.text()).toMatch(/Logged: OPENED EARLY, closed 30(\.\d)? s of 175 s/);
    driven.until(50);
    expect(driven.cycles).toHaveLength(1);
    expect(driven.cycles[0]).toMatchObject({ result: 'opened-early' });
    expect(elapsedS(driven)).toBeCloseTo(7, 1);
  });

  it('key C in a closing changes nothing and says how long it has run', () => {
    const driven = heating().contact(true).until(60).key('c').until(60.5);
    expect(elapsedS(driven)).toBeCloseTo(50.5, 1);
    expect(driven.text()).toMatch(/Closed already for 50 s/);
  });
});

describe('channels without a bond line', () => {
  const job = { ...JOB, roles: ['upper-platen', 'lower-platen'] as const, band: [] };

  it('give platens and time: a cycle is done, its hold not measured', () => {
    const driven = new DrivenBonding({ job }).until(10);
    expect(driven.text()).toMatch(/Upper platen 450 °F/);
    driven.key('c').until(186).key('o').until(200);
    expect(driven.cycles).toEqual([
      expect.objectContaining({ result: 'done', hold: 'not-measured', againstBand: 'not-compared' }),
    ]);
    expect(driven.cycles[0]?.platensAtClosingC).toEqual({ upper: 232.2, lower: 232.2 });
  });
});
