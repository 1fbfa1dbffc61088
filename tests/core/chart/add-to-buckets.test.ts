import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addToBuckets } from '../../../src/core/chart/add-to-buckets.ts';
import { bucketPoints } from '../../../src/core/chart/bucket-points.ts';
import { startBuckets } from '../../../src/core/chart/start-buckets.ts';

const t = (temperatureC: number) => ({ kind: 'temperature', temperatureC }) as const;

describe('addToBuckets', () => {
  it('keeps at most 600 closed buckets over eight hours at 10 readings a second, the extremes among them', () => {
    let trace = startBuckets();
    for (let i = 0; i < 288_000; i++)
      trace = addToBuckets(trace, i / 10, [t(i === 123_456 ? 400 : i === 99 ? -20 : 100)]);
    expect(trace.closed.length).toBeLessThanOrEqual(600);
    const points = bucketPoints(trace, 0);
    expect(Math.max(...points.map((p) => p.highC))).toBe(400);
    expect(Math.min(...points.map((p) => p.lowC))).toBe(-20);
    expect(points.at(-1)?.toS).toBe(28_799.9);
  });

  it('holds lowest, highest and last of every reading for any series (property)', () => {
    const readings = fc.array(
      fc.record({
        stepS: fc.double({ min: 0, max: 3, noNaN: true }),
        c: fc.double({ min: -50, max: 500, noNaN: true }),
      }),
      {
        minLength: 1,
        maxLength: 300,
      },
    );
    fc.assert(
      fc.property(readings, (series) => {
        let trace = startBuckets(0.25, 16);
        let timeS = 0;
        for (const { stepS, c } of series) {
          timeS += stepS;
          trace = addToBuckets(trace, timeS, [t(c)]);
        }
        const points = bucketPoints(trace, 0);
        const all = series.map((s) => s.c);
        expect(Math.min(...points.map((p) => p.lowC))).toBe(Math.min(...all));
        expect(Math.max(...points.map((p) => p.highC))).toBe(Math.max(...all));
        expect(points.at(-1)?.lastC).toBe(all.at(-1));
        expect(trace.closed.length).toBeLessThanOrEqual(16);
        for (let i = 1; i < points.length; i++)
          expect(points[i]!.fromS).toBeGreaterThanOrEqual(points[i - 1]!.toS);
      }),
      { numRuns: 100 },
    );
  });

  it('keeps a fault and never lets it or NaN into lowest and highest', () => {
    let trace = startBuckets();
    trace = addToBuckets(trace, 0, [{ kind: 'fault', fault: 'open-circuit' }]);
    trace = addToBuckets(trace, 0.1, [t(Number.NaN)]);
    trace = addToBuckets(trace, 0.2, [{ kind: 'missing' }]);
    expect(bucketPoints(trace, 0)[0]).toMatchObject({ measured: false, faulted: true });
    trace = addToBuckets(trace, 0.24, [t(20)]);
    expect(bucketPoints(trace, 0)[0]).toMatchObject({ measured: true, faulted: true, lowC: 20, highC: 20 });
  });

  it('ignores a reading that is older than the latest, or at no time', () => {
    const trace = addToBuckets(startBuckets(), 5, [t(1)]);
    expect(addToBuckets(trace, 4.9, [t(2)])).toBe(trace);
    expect(addToBuckets(trace, Number.NaN, [t(2)])).toBe(trace);
  });
});
