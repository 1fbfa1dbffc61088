import { describe, expect, it } from 'vitest';
import type { CommonPart } from '../../../src/core/uncertainty/SoakTimeBudget.ts';
import { soakTimeBudget } from '../../../src/core/uncertainty/soak-time-budget.ts';
import { trialRun } from '../trial/trial-run.ts';

/** ±2.2 °C: ASTM E230, type K, standard tolerance; ±0.75 °C expanded (k = 2) after calibration is invented. */
const PROBE: CommonPart = {
  code: 'thermocouple-tolerance',
  stated: { limitC: 2.2 },
  remedy: { action: 'calibrate-probe', stated: { standardUncertaintyC: 0.375 } },
};
const runs = [53, 53.5, 54].map((soak) => trialRun(soak));

describe('budget of the mean soak time', () => {
  it('run to run 0.5/√3 = 0.289 s with 2 degrees of freedom, probe 0.927 s: probe first, combined 0.971 s', () => {
    const budget = soakTimeBudget(runs, [PROBE]);
    expect(budget.lines.map((line) => line.code)).toEqual(['thermocouple-tolerance', 'run-to-run']);
    expect(budget.lines[1]?.standardUncertaintyS).toBeCloseTo(0.5 / Math.sqrt(3), 10);
    expect(budget.lines[1]?.degreesOfFreedom).toBe(2);
    expect(budget.total.standardUncertaintyS).toBeCloseTo(
      Math.hypot(0.5 / Math.sqrt(3), 2.2 / 1.37 / Math.sqrt(3)),
      10,
    );
    expect(budget.total.method).toBe('monte-carlo');
    expect(budget.lines.reduce((sum, line) => sum + (line.share ?? 0), 0)).toBeCloseTo(1, 10);
  });

  it('what each run leaves open is shown as of which, 0.11/√3 s, and never added', () => {
    const budget = soakTimeBudget(runs, []);
    expect(budget.ofWhich[0]?.standardUncertaintyS).toBeCloseTo(0.11 / Math.sqrt(3), 10);
    expect(budget.ofWhich[0]?.share).toBeNull();
    expect(budget.total.standardUncertaintyS).toBeCloseTo(0.5 / Math.sqrt(3), 10);
  });

  it('without a common part it is the mean interval: 4.303·0.5/√3 = 1.242 s', () => {
    expect(soakTimeBudget(runs, []).total.expandedUncertaintyS).toBeCloseTo(1.242, 3);
    expect(soakTimeBudget(runs, []).common).toBeNull();
  });

  it('more runs do not shrink the probe: its line is the same for 3 and for 30 runs', () => {
    const many = Array.from({ length: 30 }, (_, index) => trialRun(53 + (index % 3) * 0.5));
    const probeOf = (counting: typeof runs) => soakTimeBudget(counting, [PROBE]).common;
    expect(probeOf(many)?.upperS).toBeCloseTo(probeOf(runs)?.upperS ?? 0, 10);
    expect(probeOf(runs)?.upperS).toBeCloseTo((0.9 * 2.2) / 1.37, 10);
  });

  it('says what would shrink it, like with like: calibrate the probe, 1.5 s to 0.5 s, both expanded', () => {
    const [line] = soakTimeBudget(runs, [PROBE]).lines;
    expect(line?.expandedS).toBeCloseTo(1.5, 1);
    expect(line?.remedy?.action).toBe('calibrate-probe');
    // 1.95996 · 0.375 ÷ 1.37.
    expect(line?.remedy?.expandedThenS).toBeCloseTo(0.54, 2);
  });

  it('a platen offset of ±2 °C at −0.5 s/°C is ±1 s, whatever the slope', () => {
    const platen: CommonPart = { code: 'platen-offset', stated: { limitC: 2 }, sensitivitySPerC: -0.5 };
    const line = soakTimeBudget(runs, [platen]).lines.find(({ code }) => code === 'platen-offset');
    expect(line?.standardUncertaintyS).toBeCloseTo(1 / Math.sqrt(3), 10);
  });

  it('one run: only its own crossing and closing, spread said to be unknown', () => {
    const budget = soakTimeBudget([trialRun(53.5)], [PROBE]);
    expect(budget.spreadUnknown).toBe(true);
    expect(budget.lines.map((line) => line.code)).toEqual(['thermocouple-tolerance', 'single-run']);
  });

  it('refuses no run, a run without a soak time, and a negative standard uncertainty', () => {
    expect(() => soakTimeBudget([], [PROBE])).toThrow(expect.objectContaining({ code: 'too-few-values' }));
    expect(() => soakTimeBudget([trialRun(null)], [])).toThrow(
      expect.objectContaining({ code: 'value-not-finite' }),
    );
    const bad: CommonPart = { code: 'clock', stated: { standardUncertaintyS: -1 } };
    expect(() => soakTimeBudget(runs, [bad])).toThrow(
      expect.objectContaining({ code: 'option-out-of-range' }),
    );
  });
});
