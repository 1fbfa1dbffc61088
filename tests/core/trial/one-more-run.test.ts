import { describe, expect, it } from 'vitest';
import { oneMoreRun } from '../../../src/core/trial/one-more-run.ts';

describe('oneMoreRun', () => {
  // Student's t, two-sided 95 %: 12.706, 4.303, 3.182, 2.776 at 1, 2, 3, 4 degrees of freedom
  // (NIST/SEMATECH e-Handbook, 1.3.6.7.2), times s/√n with s = 1 s.
  it.each([
    [2, 12.706 / Math.sqrt(2), 4.303 / Math.sqrt(3)],
    [3, 4.303 / Math.sqrt(3), 3.182 / Math.sqrt(4)],
    [4, 3.182 / Math.sqrt(4), 2.776 / Math.sqrt(5)],
  ])('%i runs with a spread of 1 s: ± %f s becomes ± %f s', (runs, nowS, thenS) => {
    const result = oneMoreRun({ runs, sdSoakS: 1 });
    expect(result?.halfWidthNowS).toBeCloseTo(nowS, 3);
    expect(result?.halfWidthThenS).toBeCloseTo(thenS, 3);
  });

  it('says nothing of one run', () => {
    expect(oneMoreRun({ runs: 1, sdSoakS: null })).toBeNull();
  });
});
