import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextIntervalS, staleLimitS } from '../../../src/core/bonding/stale-limit-s.ts';
import { steady } from '../../../src/core/bonding/steady.ts';
import { bondLineC, DrivenBonding } from './driven-bonding.ts';

describe('stale limit (the rule as stated: five intervals, at least 1 s; above 5 s two and a half)', () => {
  it.each([
    [0.01, 1],
    [0.1, 1],
    [0.2, 1],
    [0.5, 2.5],
    [1, 5],
    [2, 5],
    [10, 25],
  ])('a reader that gives a reading every %f s is stale after %f s', (intervalS, limitS) => {
    expect(staleLimitS(intervalS)).toBeCloseTo(limitS, 9);
  });

  it('a silence of 60 s in a 0.1 s reader makes 0.16 s of its interval, and a slower rate is learnt', () => {
    expect(nextIntervalS(0.1, 60)).toBeCloseTo(0.1 + 0.2 * 0.3, 9);
    let intervalS: number | null = 0.1;
    for (let i = 0; i < 40; i++) intervalS = nextIntervalS(intervalS, 1);
    expect(intervalS).toBeCloseTo(1, 2);
    expect(nextIntervalS(0.1, Number.NaN)).toBe(0.1);
  });

  it('at one reading a second nothing is stale for 60 s; at ten a second it is 1.2 s after the last', () => {
    const slow = new DrivenBonding({ intervalS: 1 }).until(10).key('c');
    for (let i = 0; i < 60; i++) expect(slow.until(slow.timeS + 1).text()).not.toMatch(/as it was/);
    const fast = new DrivenBonding().until(10).key('c').until(12);
    fast.until(fast.timeS + 0.9, { silent: true });
    expect(fast.text()).not.toMatch(/as it was/);
    expect(fast.until(fast.timeS + 0.3, { silent: true }).text()).toMatch(/bond line as it was 1 s ago/);
    expect(fast.until(fast.timeS + 8, { silent: true }).text()).toMatch(/bond line as it was 9 s ago/);
    expect(fast.until(fast.timeS + 0.3).text()).not.toMatch(/as it was/);
  });
});

describe('platens at the band’s edge (±5 °F = 2.78 °C about 232.2 °C)', () => {
  it('2.7 and 2.9 °C above set point in turn never flags out of band', () => {
    const driven = new DrivenBonding({ upperC: (timeS) => 232.2 + (Math.round(timeS * 10) % 2 ? 2.7 : 2.9) });
    for (let i = 1; i <= 60; i++) expect(driven.until(i).state.platens.upper?.value).toBe(true);
  });

  it('out for 2.9 s is not flagged, for 3.3 s it is, and 3.3 s inside it is ready again', () => {
    const out = (timeS: number) =>
      timeS > 10 && timeS <= 13.2 ? 240 : timeS > 20 && timeS <= 24 ? 240 : 232.2;
    const driven = new DrivenBonding({ upperC: out }).until(12.9);
    expect(driven.state.platens.upper?.value).toBe(true);
    expect(driven.text()).toMatch(/Upper platen 464 °F \(240 °C\), just above/);
    driven.until(23.4);
    expect(driven.state.platens.upper?.value).toBe(false);
    expect(driven.text()).toMatch(/Upper platen 464 °F \(240 °C\), ABOVE/);
    expect(driven.until(25).text()).toMatch(/just back in/);
    expect(driven.until(27.4).state.platens.upper?.value).toBe(true);
  });

  it('a closing while it is flagged logs platen out of band, one at the flickering edge does not', () => {
    const outs = [240, 232.2 + 2.7].map((edgeC) => {
      const driven = new DrivenBonding({
        upperC: (timeS) => (edgeC === 240 || Math.round(timeS * 10) % 2 ? edgeC : 232.2 + 2.9),
        bondC: (timeS) => bondLineC(timeS - 10),
      });
      return driven.until(10).key('c').until(186).key('o').until(200).cycles[0]?.flags;
    });
    expect(outs[0]).toContain('platen-out-of-band');
    expect(outs[1]).not.toContain('platen-out-of-band');
  });
});

describe('bond line at its band’s edge', () => {
  it('1.5 s above the band is not flagged, 2.5 s is, for good in the log', () => {
    for (const [lengthS, flagged] of [
      [1.5, false],
      [2.5, true],
    ] as const) {
      const driven = new DrivenBonding({
        bondC: (timeS) => bondLineC(timeS - 10) + (timeS > 100 && timeS <= 100 + lengthS ? 15 : 0),
      });
      driven.until(10).key('c').until(186).key('o').until(200);
      expect(driven.cycles[0]?.flags.includes('outside-recipe-band')).toBe(flagged);
      expect(driven.cycles[0]?.againstBand).toBe(flagged ? 'outside' : 'inside');
    }
  });
});

it('a steady value changes only after the stated time of one and the same sight (any sequence)', () => {
  fc.assert(
    fc.property(fc.array(fc.boolean(), { minLength: 1, maxLength: 200 }), (seen) => {
      let state = steady<boolean>(null, seen[0]!, 0, 3e6);
      let run = 0;
      seen.forEach((one, i) => {
        const before = state.value;
        run = i > 0 && one === seen[i - 1] ? run + 1 : 0;
        state = steady(state, one, i * 1e6, 3e6);
        // One sight a second: more than 3 s together are four seconds after the first.
        if (state.value !== before) expect(run).toBeGreaterThan(3);
        else if (run > 3) expect(state.value).toBe(one);
      });
    }),
  );
});
