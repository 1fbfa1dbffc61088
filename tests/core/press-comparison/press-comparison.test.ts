import { describe, expect, it } from 'vitest';
import { alignedSeries } from '../../../src/core/press-comparison/aligned-series.ts';
import { compareTrials } from '../../../src/core/press-comparison/compare-trials.ts';
import { compareWarmUps } from '../../../src/core/press-comparison/compare-warm-ups.ts';
import { noRunResult } from '../../../src/core/session/no-run-result.ts';
import { trialComparisonLines, warmUpComparisonLines } from '../../../src/core/text/comparison-text.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';
import { analyseWarmUp } from '../../../src/core/warm-up/analyse-warm-up.ts';
import { recordOf, rulesWith, secondOrder } from '../warm-up/second-order.ts';
import { shippedWarmUp } from '../warm-up/shipped-warm-up.ts';

const settlesAt = (levelC: number) =>
  analyseWarmUp(
    recordOf((timeS) => 24 + (levelC - 24) * secondOrder(1, 0.02, timeS - 60), { endS: 2000, intervalS: 2 }),
    rulesWith(232),
    60,
  );

describe('two presses by their warm-ups', () => {
  it('levels 231, 232, 233 against 234, 235, 236 °C: difference 3, 95 % interval 3 ± 2.776·√(2/3) = 0.733 to 5.267', () => {
    // Equal variances of 1, three a side: Welch's degrees of freedom are 4, t = 2.776 (NIST e-Handbook 1.3.6.7.2).
    const comparison = compareWarmUps(
      { name: 'North', warmUps: [231, 232, 233].map(settlesAt) },
      { name: 'South', warmUps: [234, 235, 236].map(settlesAt) },
    );
    const level = comparison.figures.find((one) => one.key === 'levelC')!;
    expect(level.difference).toBeCloseTo(3, 3);
    expect(level.interval!.degreesOfFreedom).toBeCloseTo(4, 3);
    expect(level.interval!.low).toBeCloseTo(3 - 2.776 * Math.sqrt(2 / 3), 2);
    expect(level.interval!.high).toBeCloseTo(3 + 2.776 * Math.sqrt(2 / 3), 2);
    expect(level.standsOut).toBe(true);
    const text = warmUpComparisonLines(comparison, 'F').join('\n');
    // Differences in °F: × 1.8, never + 32.
    expect(text).toMatch(/steady level, °F +449\.6 +455\.0 +\+5\.4 +\+1\.3 to \+9\.5 +stands out/);
  });

  it('one warm-up a side: differences without intervals, and it is said', () => {
    const comparison = compareWarmUps(
      { name: 'before', warmUps: [settlesAt(232)] },
      { name: 'after', warmUps: [settlesAt(230)] },
    );
    expect(comparison.repeated).toBe(false);
    expect(comparison.figures.every((one) => one.interval === null && !one.standsOut)).toBe(true);
    expect(warmUpComparisonLines(comparison, 'C').join('\n')).toContain('no interval is told');
  });

  it('a press against itself: nothing stands out', () => {
    const warmUps = [231, 232, 233].map(settlesAt);
    const { figures } = compareWarmUps({ name: 'a', warmUps }, { name: 'b', warmUps });
    expect(figures.filter((one) => one.standsOut)).toEqual([]);
  });

  it('copies of one warm-up a side hold no spread: no interval, nothing stands out', () => {
    const twice = (levelC: number) => [levelC, levelC].map(settlesAt);
    const { figures } = compareWarmUps(
      { name: 'a', warmUps: twice(231) },
      { name: 'b', warmUps: twice(235) },
    );
    expect(figures.filter((one) => one.interval !== null || one.standsOut)).toEqual([]);
    expect(figures.find((one) => one.key === 'levelC')!.difference).toBeCloseTo(4, 3);
  });

  it('North and South as shipped: time constants 2500 and 2291.7 s and lower levels told apart, rooms not', () => {
    const side = (press: string) => ({
      name: press,
      warmUps: [1, 2, 3].map((number) => {
        const { record, rules } = shippedWarmUp(`warm-up-${press}-${number}`);
        return analyseWarmUp(record, rules);
      }),
    });
    const { figures } = compareWarmUps(side('north'), side('south'));
    const lower = (key: string) => figures.find((one) => one.role === 'lower-platen' && one.key === key)!;
    expect(lower('timeConstantS').standsOut).toBe(true);
    expect(lower('timeConstantS').interval!.low).toBeLessThan(11_000 / 4.8 - 11_000 / 4.4 + 10);
    expect(lower('timeConstantS').interval!.high).toBeGreaterThan(11_000 / 4.8 - 11_000 / 4.4 - 10);
    expect(lower('levelC').difference).toBeCloseTo(-4 - -0.6, 1);
    expect(lower('startC').standsOut).toBe(false);
    expect(lower('readyAtS').second).toEqual([null, null, null]);
    expect(lower('readyAtS').difference).toBeNull();
  });
});

describe('series for an overlay chart', () => {
  it('is aligned at power-on and holds the means of its steps, none where nothing was read', () => {
    const record = recordOf((timeS) => 20 + timeS, { endS: 100, intervalS: 1 });
    const channel = record.channels[0]!;
    const holed = {
      ...record,
      channels: [
        {
          ...channel,
          timesS: channel.timesS.filter((time) => time < 50 || time >= 70),
          valuesC: channel.valuesC.filter((_, i) => channel.timesS[i]! < 50 || channel.timesS[i]! >= 70),
        },
      ],
    };
    const [series] = alignedSeries('one', 'first', holed, { timeS: 30, by: 'stated' }, 10);
    const point = (timeS: number) => series!.points.find((one) => one.timeS === timeS);
    // Readings at 30 … 39 s from the start are 50 … 59 °C: mean 54.5 in the step from 0 to 10 s.
    expect(point(5)?.temperatureC).toBeCloseTo(54.5, 9);
    expect(point(-5)?.temperatureC).toBeCloseTo(44.5, 9);
    expect(point(25)).toBeUndefined();
  });
});

describe('two presses by trials', () => {
  const runs = (soakTimesS: readonly number[]): readonly TrialRun[] =>
    soakTimesS.map((soakTimeS, i) => ({
      source: `run ${i + 1}`,
      decision: { kind: 'automatic' },
      result: {
        ...noRunResult(100, 200),
        pressClosed: {
          timeS: 10,
          standardUncertaintyS: 0.1,
          by: 'contact' as const,
          all: [],
          disagreementS: null,
        },
        soakTimeS,
        peakC: 210,
        verdict: 'good',
        reasons: [],
      },
    }));
  const first = runs([51, 52, 53]);
  const second = runs([54, 55, 56]);
  const plan = { slowerS: 6, fasterS: 6, statedAt: '2026-03-20T08:00:00+01:00' };

  it('soak times 3 s apart: Welch 95 % 0.73 to 5.27 s; alike within ±6 s (90 %: 3 ± 2.132·√(2/3)), not within ±4 s', () => {
    const alike = compareTrials({ first, second, plan, probePartS: 0, recipe: null });
    expect(alike.difference!.low).toBeCloseTo(3 - 2.776 * Math.sqrt(2 / 3), 2);
    // t(0.95, 4) = 2.132, NIST e-Handbook 1.3.6.7.2.
    expect(alike.equivalence).toMatchObject({ kind: 'shown' });
    if (alike.equivalence?.kind === 'shown')
      expect(alike.equivalence.highS).toBeCloseTo(3 + 2.132 * Math.sqrt(2 / 3), 2);
    const apart = compareTrials({
      first,
      second,
      plan: { ...plan, slowerS: 4, fasterS: 4 },
      probePartS: 0,
      recipe: null,
    });
    expect(apart.equivalence?.kind).toBe('not-shown');
    expect(trialComparisonLines(alike, { first: 'North', second: 'South' }, 'F').join('\n')).toContain(
      'Shown: South within',
    );
  });

  it('recipe: 120 s hold needs 55 + 2.920·1·√(4/3) + 120 = 178.37 s on the second press; 179 s cover it, 178 s do not', () => {
    // t(0.95, 2) = 2.920, NIST e-Handbook 1.3.6.7.2; prediction bound mean + t·s·√(1 + 1/n).
    const cover = (dwellS: number) =>
      compareTrials({
        first,
        second,
        plan: null,
        probePartS: 0,
        recipe: { dwellS, holdS: 120, highestPeakC: null },
      }).cover!;
    expect(cover(179).kind).toBe('covers');
    expect(cover(178).kind).toBe('too-short');
    const covered = cover(179);
    if (covered.kind !== 'too-few-runs') expect(covered.neededS).toBeCloseTo(178.37, 1);
    expect(
      compareTrials({
        first,
        second,
        plan: null,
        probePartS: 0,
        recipe: { dwellS: 179, holdS: 120, highestPeakC: 200 },
      }).cover!.kind,
    ).toBe('too-hot');
  });

  it('under three runs a side no claim is made', () => {
    expect(
      compareTrials({ first, second: runs([55, 56]), plan, probePartS: 0, recipe: null }).equivalence,
    ).toMatchObject({ kind: 'too-few-runs' });
  });
});
