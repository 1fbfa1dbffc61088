import { describe, expect, it } from 'vitest';
import type { AlignedSeries } from '../../../src/core/press-comparison/aligned-series.ts';
import type { WarmUpComparison } from '../../../src/core/press-comparison/WarmUpComparison.ts';
import { type ComparisonReportInput, comparisonReport } from '../../../src/core/report/comparison-report.ts';

const comparison: WarmUpComparison = {
  first: { name: 'North', warmUps: [] },
  second: { name: 'South <b>\u202E', warmUps: [] },
  figures: [
    {
      role: 'upper-platen',
      key: 'riseTimeS',
      kind: 'time',
      first: [960, 966],
      second: [1040, 1043],
      firstMean: 963,
      secondMean: 1041.5,
      difference: 78.5,
      interval: { low: 18.3, high: 138.7, degreesOfFreedom: 2 },
      standsOut: true,
    },
    {
      role: 'upper-platen',
      key: 'overshootC',
      kind: 'difference',
      first: [0],
      second: [5],
      firstMean: 0,
      secondMean: 5,
      difference: 5,
      interval: null,
      standsOut: false,
    },
  ],
  repeated: true,
  rulesDiffer: false,
};
const series = (side: 'first' | 'second', role: AlignedSeries['role'], endC: number): AlignedSeries => ({
  source: `${side}.txt`,
  side,
  role,
  stepS: 10,
  points: Array.from({ length: 360 }, (_, step) => ({
    timeS: step * 10,
    temperatureC: 24 + (endC - 24) * (1 - Math.exp(-step / 60)),
  })),
});
const input: ComparisonReportInput = {
  comparison,
  series: [
    series('first', 'upper-platen', 232),
    series('second', 'upper-platen', 231),
    series('second', 'upper-platen', 230),
  ],
  recordings: [
    { side: 'North', name: 'warm-up-north-1.dwell.txt', madeAt: null, sound: false, sha256: 'ab'.repeat(32) },
  ],
  simulated: false,
  note: null,
  unit: 'F',
  madeAt: '2026-03-02T12:00:00Z',
  program: 'Dwellwright 0.1.0',
};
const content = comparisonReport(input);
const table = content.sections.find(({ heading }) => heading === 'Upper platen')?.blocks[0];
const rows = table?.kind === 'table' ? table.rows.map(({ cells }) => cells) : [];

describe('the report of two presses compared', () => {
  it('gives each figure side by side with its difference, interval and whether it stands out', () => {
    expect(rows[0]?.slice(1)).toEqual(['963.0', '1041.5', '+78.5', '+18.3 to +138.7', 'stands out']);
  });

  // A difference of 5 °C is 9 °F: 5 · 1.8, never + 32.
  it('turns a difference of 5 °C into 9 °F, and tells no interval where there is none', () => {
    expect(rows[1]?.slice(1)).toEqual(['0.0', '9.0', '+9.0', '—', '']);
  });

  it('draws one look for each press and platen, and every warm-up, over minutes', () => {
    const figure = content.sections.flatMap(({ blocks }) => blocks).find((block) => block.kind === 'figure');
    const shapes = figure?.kind === 'figure' ? figure.picture.shapes : [];
    const words = shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(words).toContain('North, upper platen');
    expect(words.filter((word) => word.endsWith('upper platen'))).toHaveLength(2);
    expect(words).toContain('Minutes from power-on');
    // 359 steps of 10 s end at 59.8 min.
    expect(words).toContain('55');
    expect(shapes.flatMap((shape) => (shape.kind === 'clipped' ? shape.shapes : []))).toHaveLength(3);
  });

  it('says which recording is not whole, and its hash', () => {
    const text = JSON.stringify(content.sections.find(({ heading }) => heading === 'Versions and data'));
    expect(text).toContain('cut short or ALTERED');
    expect(text).toContain('ab'.repeat(32));
  });

  it('shows a hostile name as it stands, made harmless', () => {
    expect(content.subtitle).toBe('South <b>\\u{202E} against North');
    expect(JSON.stringify(content)).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
  });
});
