import { describe, expect, it } from 'vitest';
import type { ChartPoint, ChartSpec } from '../../../src/core/chart/ChartSpec.ts';
import { drawChart } from '../../../src/core/chart/draw-chart.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';

const point = (timeS: number, temperatureC: number): ChartPoint => ({
  fromS: timeS,
  toS: timeS,
  lowC: temperatureC,
  highC: temperatureC,
  lastC: temperatureC,
  measured: true,
  faulted: false,
});

function spec(over: Partial<ChartSpec> = {}): ChartSpec {
  return {
    columns: 60,
    rows: 22,
    fromS: 0,
    toS: 100,
    zeroS: 0,
    lowC: 0,
    highC: 200,
    unit: 'C',
    ascii: true,
    targetC: null,
    traces: [],
    marks: [],
    band: [],
    longestBridgedS: 2,
    ...over,
  };
}

const ramp = Array.from({ length: 1001 }, (_, i) => point(i / 10, i / 5));
const bond = (points: readonly ChartPoint[]) => ({
  letter: 'B',
  role: 'bond-line' as const,
  line: 'solid' as const,
  points,
});
const text = (s: ChartSpec) => drawChart(s).map(rowText);
/** Plot area only: behind the axis, before the end letters. */
const plot = (s: ChartSpec) =>
  text(s)
    .slice(1, -1)
    .map((row) => row.slice(6, -2));

describe('drawChart', () => {
  it('fills exactly its rows and columns, in braille and in ASCII', () => {
    for (const ascii of [true, false]) {
      for (const [columns, rows] of [
        [20, 5],
        [51, 9],
        [100, 30],
      ] as const) {
        const drawn = text(
          spec({
            columns,
            rows,
            ascii,
            traces: [bond(ramp)],
            targetC: 150,
            marks: [{ timeS: 50, label: 'closed' }],
          }),
        );
        expect(drawn.length).toBe(rows);
        expect(new Set(drawn.map((row) => row.length))).toEqual(new Set([columns]));
      }
    }
  });

  it('draws a straight ramp from 0 to 200 °C as one straight diagonal', () => {
    const rows = plot(spec({ traces: [bond(ramp)] }));
    const [height, width] = [rows.length, rows[0]?.length ?? 0];
    rows.forEach((row, r) => {
      for (const [c, character] of [...row].entries()) {
        if (character !== 'b') continue;
        const expectedColumn = (1 - r / (height - 1)) * (width - 1);
        expect(Math.abs(c - expectedColumn)).toBeLessThanOrEqual(width / height);
      }
    });
    expect(rows.at(-1)?.[0]).toBe('b');
    expect(rows[0]?.at(-1)).toBe('b');
  });

  it('keeps a one-reading spike among 100,000 readings visible (lowest and highest per column)', () => {
    const many = Array.from({ length: 100_000 }, (_, i) => point(i / 1000, i === 54_321 ? 190 : 50));
    const rows = plot(spec({ traces: [bond(many)] }));
    const top = rows.findIndex((row) => row.includes('b'));
    expect(top).toBeLessThanOrEqual(1);
    expect(rows[top]?.indexOf('b')).toBeCloseTo(0.54321 * 51, -0.5);
  });

  it('leaves a gap of 20 s open and joins readings 1.5 s apart', () => {
    const gap = ramp.filter((p) => p.fromS < 40 || p.fromS > 60);
    const joined = plot(spec({ traces: [bond(gap)], longestBridgedS: 30 }));
    const open = plot(spec({ traces: [bond(gap)] }));
    const columnsWith = (rows: readonly string[]) =>
      [...(rows[0] ?? '')].map((_, c) => rows.some((row) => row[c] === 'b')).filter(Boolean).length;
    expect(columnsWith(joined)).toBe(52);
    expect(columnsWith(open)).toBeGreaterThan(38);
    expect(columnsWith(open)).toBeLessThan(46);
    const slow = Array.from({ length: 67 }, (_, i) => point(i * 1.5, i * 3));
    expect(columnsWith(plot(spec({ columns: 160, traces: [bond(slow)] })))).toBeGreaterThan(148);
  });

  it('marks a fault with x on the lowest row and does not draw through it', () => {
    const faulted = ramp.map((p) =>
      p.fromS >= 40 && p.fromS <= 44 ? { ...p, measured: false, faulted: true } : p,
    );
    const rows = plot(spec({ traces: [bond(faulted)], longestBridgedS: 30 }));
    const crosses = [...(rows.at(-1) ?? '')].flatMap((c, i) => (c === 'x' ? [i] : []));
    expect(crosses.length).toBeGreaterThan(0);
    for (const column of crosses.slice(1, -1)) expect(rows.some((row) => row[column] === 'b')).toBe(false);
  });

  it('names the target where no trace runs through the word: further left when the trace crosses at the right end', () => {
    const crossing = bond([
      ...ramp.filter(({ fromS }) => fromS < 5),
      point(94, 150),
      point(94.2, 50),
      point(94.4, 90),
    ]);
    for (const ascii of [true, false]) {
      const rows = text(spec({ targetC: 100, traces: [crossing], longestBridgedS: 200, ascii }));
      expect(rows.filter((row) => row.includes(' target '))).toHaveLength(1);
    }
  });

  it('puts the target line on the row of its temperature and names it in the unit shown', () => {
    const rows = text(spec({ targetC: 100, unit: 'F', lowC: 0, highC: 200 }));
    const at = rows.findIndex((row) => row.includes('target'));
    expect(at).toBe(1 + Math.round((1 - 0.5) * 19));
    expect(rows[at]?.slice(0, 5)).toBe('  212'); // 100 °C = 212 °F, exact
    expect(rows[0]).toContain('F');
  });

  it('counts the time axis from press closed and labels marks above their line', () => {
    const rows = text(
      spec({
        fromS: 10,
        toS: 110,
        zeroS: 20,
        marks: [
          { timeS: 20, label: 'closed' },
          { timeS: 70, label: 'crossing' },
        ],
      }),
    );
    expect(rows[0]).toMatch(/closed +crossing/);
    expect(rows.at(-1)).toMatch(/0 s.*30 s.*1 min/);
    const closedColumn = rows[3]?.indexOf(':') ?? -1;
    expect(closedColumn).toBe(6 + Math.round(0.1 * 51));
  });

  it('tells two channels apart by letter (ASCII) and by line (braille), not only by role', () => {
    const flat = (c: number) => Array.from({ length: 1001 }, (_, i) => point(i / 10, c));
    const traces = [
      { letter: 'B', role: 'bond-line' as const, line: 'solid' as const, points: flat(50) },
      { letter: 'U', role: 'upper-platen' as const, line: 'dashed' as const, points: flat(100) },
      { letter: 'L', role: 'lower-platen' as const, line: 'dotted' as const, points: flat(150) },
    ];
    const ascii = text(spec({ traces }));
    for (const letter of ['b', 'u', 'l'])
      expect(ascii.some((row) => row.includes(letter.repeat(40)))).toBe(true);
    const braille = plot(spec({ traces, ascii: false }));
    const patterns = braille.filter((row) => /[\u2801-\u28ff]/u.test(row)).map((row) => row.trim());
    expect(new Set(patterns.map((row) => new Set(row).size)).size).toBeGreaterThan(1);
    expect(new Set(patterns).size).toBe(3);
    for (const letter of ['B', 'U', 'L'])
      expect(text(spec({ traces, ascii: false })).some((row) => row.endsWith(letter))).toBe(true);
  });

  it('in ASCII a chart of 7 rows shows a straight rise in 15 levels: no level is longer than its fifteenth and a little', () => {
    const rows = plot(spec({ rows: 7, traces: [bond(ramp)], highC: 200 }));
    expect(rows).toHaveLength(5);
    const drawn = rows.map((row) => row.replace(/ /g, ''));
    // 52 columns in 15 levels: 3 or 4 columns each, and the rows' three marks in their order from below.
    for (const row of drawn.slice(1, -1)) expect(row).toMatch(/^\.{2,5}~{2,5}'{2,5}$/);
    const levels =
      drawn
        .reverse()
        .join('')
        .match(/\.+|~+|'+/g) ?? [];
    expect(levels).toHaveLength(15);
  });

  it('gives nothing for a window under 20 × 5 or an empty range', () => {
    expect(drawChart(spec({ columns: 19 }))).toEqual([]);
    expect(drawChart(spec({ rows: 4 }))).toEqual([]);
    expect(drawChart(spec({ lowC: 5, highC: 5 }))).toEqual([]);
    expect(drawChart(spec({ toS: 0 }))).toEqual([]);
  });

  it('draws 100 × 30 with four channels of 1,200 points in under 5 ms (median of 50)', () => {
    const points = Array.from({ length: 1200 }, (_, i) => ({
      ...point(i / 12, 100 + 50 * Math.sin(i / 60)),
      lowC: 90,
      highC: 110,
    }));
    const traces = ['B', 'O', 'U', 'L'].map((letter) => ({ ...bond(points), letter }));
    const s = spec({
      columns: 100,
      rows: 30,
      ascii: false,
      traces,
      targetC: 120,
      marks: [{ timeS: 10, label: 'closed' }],
    });
    const took = Array.from({ length: 60 }, () => {
      const start = performance.now();
      drawChart(s);
      return performance.now() - start;
    })
      .slice(10)
      .sort((a, b) => a - b);
    expect(took[25]).toBeLessThan(5);
  });
});
