import { describe, expect, it } from 'vitest';
import { coolingWait } from '../../../src/core/cooling/cooling-wait.ts';
import { coolingText, waitText } from '../../../src/core/text/cooling-text.ts';

const ROOM = { ambientC: 24, warmLimitC: 8, measured: true };

/** Newton's law of cooling in closed form: T = Ta + (T0 − Ta)·exp(−t/τ); ripple stands for noise. */
const cooling = (fromC: number, tauS: number, overS: number, rippleC = 0) =>
  Array.from({ length: Math.round(overS * 4) + 1 }, (_, i) => ({
    timeS: 100 + i / 4,
    temperatureC: 24 + (fromC - 24) * Math.exp(-i / 4 / tauS) + rippleC * Math.sin(i * 2.1),
  }));

describe('coolingWait', () => {
  it.each([
    [150, 120],
    [90, 240],
    [45, 400],
  ])('from %i °C with a time constant of %i s: the closed form’s wait, inside its range', (fromC, tauS) => {
    const points = Object.freeze(cooling(fromC, tauS, 40));
    const result = coolingWait(points, ROOM);
    // τ · ln((T0 − Ta)/limit) from the first point, less the 40 s gone.
    const expectedS = tauS * Math.log((fromC - 24) / 8) - 40;
    if (result?.kind !== 'warm' || result.wait === null) throw new Error('no wait');
    expect(result.wait.waitS).toBeCloseTo(expectedS, 3);
    expect(result.wait.timeConstantS).toBeCloseTo(tauS, 3);
    expect(result.wait.earliestS).toBeLessThan(expectedS);
    expect(result.wait.latestS).toBeGreaterThan(expectedS);
  });

  it('with a ripple of 0.3 °C the range still holds the closed form’s wait', () => {
    const expectedS = 200 * Math.log((120 - 24) / 8) - 40;
    const result = coolingWait(cooling(120, 200, 40, 0.3), ROOM);
    if (result?.kind !== 'warm' || result.wait === null) throw new Error('no wait');
    expect(result.wait.earliestS).toBeLessThan(expectedS);
    expect(result.wait.latestS).toBeGreaterThan(expectedS);
  });

  it('a room not measured makes the range wider', () => {
    const width = (measured: boolean) => {
      const result = coolingWait(cooling(90, 240, 40), { ...ROOM, measured });
      if (result?.kind !== 'warm' || result.wait === null) throw new Error('no wait');
      return result.wait.latestS - result.wait.earliestS;
    };
    expect(width(false)).toBeGreaterThan(width(true));
  });

  it('cool at 32 °C with room 24 °C and limit 8 °C, warm at 32.1 °C', () => {
    const still = (temperatureC: number) =>
      Array.from({ length: 100 }, (_, i) => ({ timeS: i / 4, temperatureC }));
    expect(coolingWait(still(32), ROOM)?.kind).toBe('cool');
    expect(coolingWait(still(32.1), ROOM)).toMatchObject({ kind: 'warm', wait: null, why: 'not-cooling' });
  });

  it('says nothing before 15 s, nor while it warms, and nothing at all without a reading', () => {
    expect(coolingWait(cooling(120, 200, 10), ROOM)).toMatchObject({ wait: null, why: 'too-early' });
    const warming = cooling(120, 200, 40).map((p, i, all) => ({
      ...p,
      temperatureC: all.at(-1 - i)?.temperatureC ?? 0,
    }));
    expect(coolingWait(warming, ROOM)).toMatchObject({ wait: null, why: 'not-cooling' });
    expect(coolingWait([], ROOM)).toBeNull();
    expect(coolingWait([{ timeS: 1, temperatureC: Number.NaN }], ROOM)).toBeNull();
  });
});

describe('coolingText', () => {
  it('warm, wait about 6 min: rounded up, with its range', () => {
    expect(
      coolingText(
        {
          kind: 'warm',
          temperatureC: 61,
          limitC: 32,
          why: null,
          wait: { waitS: 330, earliestS: 290, latestS: 420, timeConstantS: 200 },
        },
        'F',
      ),
    ).toBe('Carrier warm: 142 °F, wait about 6 min (5 min to 7 min) for 89.6 °F (32 °C).');
  });

  it.each([
    [3, '10 s'],
    [41, '50 s'],
    [90, '2 min'],
    [121, '3 min'],
  ])('%i s is said as %s', (waitS, text) => expect(waitText(waitS)).toBe(text));
});
