import { describe, expect, it } from 'vitest';
import { noRunResult } from '../../../src/core/session/no-run-result.ts';
import { withClock } from '../../../src/core/session/with-clock.ts';

const run = Object.freeze({
  ...noRunResult(100, 200),
  soakTimeS: 54,
  soakTimeStandardUncertaintyS: 0.02,
  verdict: 'good' as const,
  reasons: [],
});
const clock = (driftPpm: number | null) => ({ driftPpm, standardUncertaintyPpm: 0, overS: 200 });

describe('reader clock against host clock', () => {
  // Arithmetic: 54 s · 1000 ppm = 0.054 s; √(0.02² + 0.054²) = 0.05758 s.
  it('1000 ppm over 54 s is budgeted as 0.054 s', () => {
    const widened = withClock(run, clock(1000));
    expect(widened.soakTimeStandardUncertaintyS).toBeCloseTo(0.057585, 5);
    expect([widened.verdict, widened.soakTimeS]).toEqual(['good', 54]);
  });
  it.each([6000, -6000, 1_000_000])('%d ppm makes the run suspect', (ppm) => {
    const { verdict, reasons } = withClock(run, clock(ppm));
    expect([verdict, reasons[0]?.code]).toEqual(['suspect', 'clock-drift']);
  });
  it.each([99_000_000, -990_000])('%d ppm is no drift: a note', (ppm) => {
    const { verdict, reasons } = withClock(run, clock(ppm));
    expect([verdict, reasons[0]?.code]).toEqual(['good', 'clock-apart']);
  });
  it('without a comparison nothing changes', () => {
    expect(withClock(run, clock(null))).toBe(run);
  });
});
