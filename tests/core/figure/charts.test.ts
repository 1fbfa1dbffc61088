import { describe, expect, it } from 'vitest';
import { crossingChart } from '../../../src/core/figure/crossing-chart.ts';
import { dwellBars } from '../../../src/core/figure/dwell-bars.ts';
import { lineLook } from '../../../src/core/figure/line-look.ts';
import type { OverlayInput } from '../../../src/core/figure/OverlayInput.ts';
import { overlayChart } from '../../../src/core/figure/overlay-chart.ts';
import type { Picture, TextShape } from '../../../src/core/figure/Picture.ts';
import { plotFrame } from '../../../src/core/figure/plot-frame.ts';
import { soakTimesChart } from '../../../src/core/figure/soak-times-chart.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';
import { trialRun } from '../trial/trial-run.ts';

const BOX = { left: 100, top: 50, width: 400, height: 300 };

/** Ramp of 2 °C/s from 20 °C, a reading a second: crosses 176.7 °C after 78.35 s. */
const ramp = (delayS: number, counts = true): OverlayInput['runs'][number] => ({
  label: String(delayS),
  counts,
  soakTimeS: 78.35 + delayS,
  slopeCPerS: 2,
  points: Array.from({ length: 160 }, (_, timeS) => ({
    timeS,
    temperatureC: 20 + 2 * Math.max(0, timeS - delayS),
  })),
});
const overlay = (runs: OverlayInput['runs'], simulated = false): OverlayInput => ({
  runs,
  targetC: 176.7,
  holdS: 120,
  unit: 'F',
  simulated,
});
const texts = (picture: Picture): readonly TextShape[] =>
  picture.shapes.flatMap((shape) =>
    shape.kind === 'text'
      ? [shape]
      : shape.kind === 'clipped'
        ? shape.shapes.filter((one) => one.kind === 'text')
        : [],
  );
const tickAt = (frameShapes: Picture['shapes'], text: string): TextShape | undefined =>
  frameShapes.find((shape): shape is TextShape => shape.kind === 'text' && shape.text === text);

describe('axes of a plot', () => {
  const frame = plotFrame({
    box: BOX,
    fromS: 0,
    toS: 200,
    lowC: 0,
    highC: 200,
    unit: 'F',
    timeTitle: 'Seconds',
  });

  // The two scales meet by definition: 212 °F = 100 °C, 392 °F = 200 °C.
  it('place 392 °F at the top and 100 °C halfway, and each tick of °F at its own °C', () => {
    expect([frame.y(200), frame.y(100), frame.y(0)]).toEqual([50, 200, 350]);
    const fahrenheit = tickAt(frame.shapes, '300');
    expect(fahrenheit?.y).toBeCloseTo(frame.y((300 - 32) / 1.8) + 4, 6);
    const celsius = frame.shapes.find(
      (shape) => shape.kind === 'text' && shape.text === '160' && shape.x > BOX.left + BOX.width,
    );
    expect(celsius?.kind === 'text' && celsius.y).toBeCloseTo(frame.y(160) + 4, 6);
  });

  it('write the chosen unit on the left, the other on the right', () => {
    const [left, right] = [tickAt(frame.shapes, 'Temperature, °F'), tickAt(frame.shapes, '°C')];
    expect(left?.x).toBeLessThan(BOX.left);
    expect(right?.x).toBeGreaterThan(BOX.left + BOX.width);
  });

  it('place 50 s at a quarter of the width', () => {
    expect(frame.x(50)).toBe(200);
    expect(tickAt(frame.shapes, 'Seconds')).toBeDefined();
  });
});

describe('the overlay of all runs', () => {
  const picture = overlayChart(overlay([ramp(0), ramp(3), ramp(20, false)]));

  it('names each run with its soak time, and says which is left out', () => {
    const words = texts(picture).map(({ text }) => text);
    expect(words).toContain('Run 0: 78.35 s');
    expect(words).toContain('Run 3: 81.35 s');
    expect(words).toContain('Run 20: 98.35 s (left out)');
    expect(words).toContain('Target 350.1 °F (176.7 °C)');
  });

  it('says SIMULATED in the picture only when it is', () => {
    const isMarked = (one: Picture) => texts(one).some(({ text }) => text === 'SIMULATED');
    expect(isMarked(picture)).toBe(false);
    expect(isMarked(overlayChart(overlay([ramp(0)], true)))).toBe(true);
  });

  it('names only the fastest and the slowest of 30 runs, and counts the rest', () => {
    const words = texts(overlayChart(overlay(Array.from({ length: 30 }, (_, index) => ramp(index))))).map(
      ({ text }) => text,
    );
    expect(words.filter((word) => word.startsWith('Run '))).toEqual(['Run 0: 78.35 s', 'Run 29: 107.35 s']);
    expect(words).toContain('28 further runs');
  });

  it('draws no line over missing readings', () => {
    const run = ramp(0);
    const points = run.points.map((point) => (point.timeS === 50 ? { ...point, temperatureC: null } : point));
    const lines = overlayChart(overlay([{ ...run, points }])).shapes.flatMap((shape) =>
      shape.kind === 'clipped' ? shape.shapes : [],
    );
    const trace = lines.find((shape) => shape.kind === 'path' && shape.d.split('L').length > 50);
    expect(trace?.kind === 'path' && trace.d.match(/M/g)).toHaveLength(2);
  });

  it('does not change what it is given', () => {
    const input = deepFreeze(overlay([ramp(0), ramp(3)]));
    expect(() => overlayChart(input)).not.toThrow();
  });

  it('draws from nothing without a number that is none', () => {
    for (const runs of [[], [{ ...ramp(0), points: [] }]]) {
      expect(JSON.stringify(overlayChart(overlay(runs)))).not.toMatch(/NaN|Infinity|null/);
    }
  });
});

describe('the runs near the target', () => {
  it('draws each crossing where its soak time lies, 3 s apart', () => {
    const picture = crossingChart(overlay([ramp(0), ramp(3)]));
    const drops = picture!.shapes.flatMap((shape) =>
      shape.kind === 'path' && /^M[\d.]+ [\d.]+V[\d.]+$/.test(shape.d)
        ? [Number(/^M([\d.]+)/.exec(shape.d)?.[1])]
        : [],
    );
    // The plot is 590 wide and shows 3 s between the crossings and 2 s on either side.
    expect(drops).toHaveLength(2);
    expect(drops[1]! - drops[0]!).toBeCloseTo((3 / 7) * 590, 0);
  });

  it('is not drawn where no run crossed', () => {
    expect(crossingChart(overlay([{ ...ramp(0), soakTimeS: null }]))).toBeNull();
  });
});

describe('lines without colour', () => {
  it('25 looks differ in dash or symbol', () => {
    const looks = Array.from({ length: 25 }, (_, index) => {
      const { dash, symbol } = lineLook(index);
      return `${dash?.join(',')}|${String(symbol.draw)}`;
    });
    expect(new Set(looks).size).toBe(25);
  });
});

describe('dwell bars', () => {
  it('of 54 + 120 s: soak ends at 54 ÷ 174 of the bar', () => {
    const dwell = {
      rule: 'mean',
      soakS: 54,
      holdS: 120,
      marginS: 0,
      totalS: 174,
      timerSetS: 174,
      provisional: false,
    } as const;
    const picture = dwellBars([{ name: 'mean', dwell }]);
    const fills = picture.shapes.filter((shape) => shape.kind === 'path' && shape.fill !== undefined);
    const edges = fills.map((shape) =>
      shape.kind === 'path' ? /^M([\d.]+) [\d.]+H([\d.]+)/.exec(shape.d)?.slice(1).map(Number) : null,
    );
    expect(edges).toHaveLength(2);
    const [soak, hold] = edges as [number[], number[]];
    expect((soak[1]! - soak[0]!) / (hold[1]! - soak[0]!)).toBeCloseTo(54 / 174, 3);
    expect(texts(picture).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['174 s', 'soak 54.00 s', 'hold 120 s']),
    );
  });
});

describe('soak times of the runs', () => {
  it('are drawn with mean and bound; without a counting run only the runs', () => {
    const runs = [53, 54, 55].map((soakTimeS, index) => ({
      label: String(index + 1),
      counts: true,
      soakTimeS,
      standardUncertaintyS: 0.1,
    }));
    const statistics = trialStatistics(runs.map(({ soakTimeS }) => trialRun(soakTimeS)));
    const words = texts(soakTimesChart({ runs, statistics, simulated: false })!).map(({ text }) => text);
    expect(words).toContain('mean 54.00 s (95 % interval shaded)');
    // t(0.95, 2) = 2.920 (NIST/SEMATECH e-Handbook 1.3.6.7.2): 54 + 2.920·1·√(4/3) = 57.37.
    expect(words).toContain('next run below 57.37 s (95 %)');
    expect(soakTimesChart({ runs: [], statistics, simulated: false })).toBeNull();
  });
});

function deepFreeze<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null) {
    Object.freeze(value);
    Object.values(value).forEach(deepFreeze);
  }
  return value;
}
