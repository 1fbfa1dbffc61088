import { describe, expect, it } from 'vitest';
import { trialHistoryLines } from '../../../src/core/text/trial-history-text.ts';
import { chartSignals } from '../../../src/core/trial-history/chart-signals.ts';
import { individualsChart } from '../../../src/core/trial-history/individuals-chart.ts';

const points = (values: readonly number[]) =>
  Object.freeze(
    values.map((meanSoakS, index) =>
      Object.freeze({
        trialId: `t${index}`,
        madeAt: `2026-01-${String(index + 1).padStart(2, '0')}T08:00:00Z`,
        meanSoakS,
        runs: 3,
      }),
    ),
  );

// NIST/SEMATECH e-Handbook, section 6.3.2.2, ten batches. Centre, mean range and both limits as quoted in a
// public test report that cites the section; the batch values are from memory and reproduce all four. By hand:
// 2.0 + 2.3 + 1.4 + 3.5 + 3.4 + 1.4 + 0.2 + 1.2 + 1.5 = 16.9, ÷ 9 = 1.8778.
const HANDBOOK = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

describe('individuals chart with moving range', () => {
  it('handbook example: centre 50.81, mean moving range 1.8778, limits 45.8159 to 55.8041', () => {
    const chart = individualsChart(points(HANDBOOK));
    expect(chart.centreS).toBeCloseTo(50.81, 10);
    expect(chart.meanMovingRangeS).toBeCloseTo(1.8778, 4);
    expect(chart.lowerLimitS).toBeCloseTo(45.8159, 4);
    expect(chart.upperLimitS).toBeCloseTo(55.8041, 4);
    expect(chart.points.every((point) => !point.signals.includes('beyond-limit'))).toBe(true);
  });

  it('is provisional with 19 points and firm with 20', () => {
    const values = Array.from({ length: 20 }, (_, index) => 53 + (index % 2));
    expect(individualsChart(points(values.slice(0, 19))).provisional).toBe(true);
    expect(individualsChart(points(values)).provisional).toBe(false);
  });

  it('judges new points by the limits of the base, which they do not move', () => {
    const chart = individualsChart(points([...HANDBOOK, 60]), { basePoints: 10 });
    expect(chart.upperLimitS).toBeCloseTo(55.8041, 4);
    // 60 − 52.1 = 7.9 > 3.267 · 1.8778 = 6.135.
    expect(chart.points.at(-1)?.signals).toEqual(expect.arrayContaining(['beyond-limit', 'jump']));
  });

  it('refuses one point and NaN', () => {
    expect(() => individualsChart(points([53]))).toThrow(expect.objectContaining({ code: 'too-few-values' }));
    expect(() => individualsChart(points([53, Number.NaN]))).toThrow(
      expect.objectContaining({ code: 'value-not-finite' }),
    );
  });
});

describe('drift and shift rules', () => {
  const limits = { centre: 0, sigma: 1 };
  const at = (values: readonly number[]) => chartSignals(values, limits).map((signals) => signals.join(' '));

  it.each<[string, readonly number[], string]>([
    ['one at 3.1 sigma', [3.1], 'beyond-limit'],
    ['one just on three sigma is inside', [3], ''],
    ['two of three beyond two sigma on one side', [2.1, 0, 2.1], 'two-of-three'],
    ['on both sides is none', [2.1, 0, -2.1], ''],
    ['four of five beyond one sigma', [1.1, 1.1, 0, 1.1, 1.1], 'four-of-five'],
    ['eight in a row below the centre', [-0.5, -0.1, -0.5, -0.1, -0.5, -0.1, -0.5, -0.1], 'shift'],
    ['seven in a row are none', [0.5, 0.1, 0.5, 0.1, 0.5, 0.1, 0.5], ''],
    ['six in a row rising', [-0.5, -0.3, -0.1, 0.1, 0.3, 0.5], 'drift'],
    ['six in a row falling', [0.5, 0.3, 0.1, -0.1, -0.3, -0.5], 'drift'],
    ['five rising are none', [-0.3, -0.1, 0.1, 0.3, 0.5], ''],
    ['a flat step breaks the drift', [-0.5, -0.3, -0.1, -0.1, 0.3, 0.5], ''],
  ])('%s', (_name, values, last) => {
    const signals = at(values);
    expect(signals.at(-1)).toBe(last);
    expect(signals.slice(0, -1).join('')).toBe('');
  });
});

describe('history in words', () => {
  it('one line a trial, a signal marked by letter and said in words', () => {
    const lines = trialHistoryLines(individualsChart(points([...HANDBOOK, 60]), { basePoints: 10 }));
    expect(lines.length).toBe(13);
    expect(lines[12]).toContain('section 6.3.2');
    expect(lines[0]).toBe(
      'Centre 50.81 s, limits 45.82 to 55.80 s, moving range up to 6.13 s. Provisional: fewer than 20 trials.',
    );
    expect(lines[1]).toMatch(/^2026-01-01 {3}49\.60 s .*o/u);
    expect(lines[11]).toContain('X outside the three-sigma limits (zone rule 1)');
  });

  it('equal trials draw without dividing by nothing', () => {
    expect(trialHistoryLines(individualsChart(points([53, 53, 53])))[1]).toContain('53.00 s o');
  });
});
