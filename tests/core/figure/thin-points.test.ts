import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TracePoint } from '../../../src/core/figure/RunTrace.ts';
import { thinPoints } from '../../../src/core/figure/thin-points.ts';

const trace = fc
  .array(fc.option(fc.double({ min: -50, max: 500, noNaN: true }), { nil: null, freq: 8 }), {
    maxLength: 400,
  })
  .map((values): TracePoint[] => values.map((temperatureC, index) => ({ timeS: index / 10, temperatureC })));

describe('thinning a trace for a picture', () => {
  it('of any trace keeps peak, lowest value, ends and every missing reading, in order', () => {
    fc.assert(
      fc.property(trace, fc.double({ min: 0.05, max: 20, noNaN: true }), (points, stepS) => {
        const kept = thinPoints(points, stepS);
        const known = (some: readonly TracePoint[]) => some.flatMap(({ temperatureC }) => temperatureC ?? []);
        expect(Math.max(...known(kept))).toBe(Math.max(...known(points)));
        expect(Math.min(...known(kept))).toBe(Math.min(...known(points)));
        expect(kept.at(0)).toEqual(points.at(0));
        expect(kept.at(-1)).toEqual(points.at(-1));
        const missing = (some: readonly TracePoint[]) =>
          some.filter(({ temperatureC }) => temperatureC === null);
        expect(missing(kept)).toEqual(missing(points));
        expect(kept).toEqual([...kept].sort((a, b) => a.timeS - b.timeS));
      }),
    );
  });

  it('keeps at most four of 100 readings a second', () => {
    const points = Array.from({ length: 1000 }, (_, index) => ({
      timeS: index / 100,
      temperatureC: Math.sin(index),
    }));
    expect(thinPoints(points, 1).length).toBeLessThanOrEqual(4 * 10);
  });
});
