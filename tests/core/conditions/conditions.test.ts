import { describe, expect, it } from 'vitest';
import { onReference } from '../../../src/core/conditions/on-reference.ts';
import { referenceConditions } from '../../../src/core/conditions/reference-conditions.ts';
import { referenceSoak } from '../../../src/core/conditions/reference-soak.ts';
import { toBeReProved } from '../../../src/core/conditions/to-be-re-proved.ts';
import type { RunFit } from '../../../src/core/heating-fit/run-fit.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';
import { trialRun } from '../trial/trial-run.ts';

/** The trade's example: 24 °C, platens 232.2 °C, τ 40.5 s, target 176.67 °C. */
const TARGET_C = (350 - 32) / 1.8;
const closedForm = (startC: number, plateauC: number) =>
  40.5 * Math.log((plateauC - startC) / (plateauC - TARGET_C));

/** A run made at these conditions, its soak time by the closed form. */
function made(startC: number, platenC: number, change: Partial<TrialRun> = {}): TrialRun {
  const run = trialRun(closedForm(startC, platenC));
  const fit: RunFit = {
    plateauC: platenC,
    timeConstantS: 40.5,
    delayS: 0,
    startC,
    covariance: [],
    residualSdC: 0.2,
    runsZ: 0,
    lag1Autocorrelation: 0,
    misfitC: 0,
    verdict: 'fits',
  };
  return {
    ...run,
    result: { ...run.result, startC, fit, platenAtClosingC: { upper: platenC, lower: platenC } },
    ...change,
  };
}

describe('soak time at reference conditions', () => {
  it.each([
    [30, 232.2],
    [24, 229],
    [34, 236],
  ])(
    'a run from %f °C with platens of %f °C comes to 53.47 s, the closed form at 24 and 232.2 °C',
    (startC, platenC) => {
      const { result } = made(startC, platenC);
      const soak = referenceSoak(result, TARGET_C, { startC: 24, platenC: 232.2 })!;
      expect(soak.soakAtReferenceS).toBeCloseTo(closedForm(24, 232.2), 9);
      expect(soak.byStartS + soak.byPlatenS).toBeCloseTo(soak.shiftS, 12);
      expect(result.soakTimeS).toBe(closedForm(startC, platenC));
    },
  );

  it('is about −0.2 s/°C of start and −0.5 s/°C of platens', () => {
    const soak = referenceSoak(made(24, 232.2).result, TARGET_C, { startC: 24, platenC: 232.2 })!;
    expect(soak.perStartC).toBeCloseTo(-0.2, 1);
    expect(soak.perPlatenC).toBeCloseTo(-0.5, 1);
  });

  it('is not given without a fit, and leaves out what is not known', () => {
    const { result } = made(24, 232.2);
    expect(referenceSoak({ ...result, fit: null }, TARGET_C, { startC: 24, platenC: 232 })).toBeNull();
    const blind = { ...result, platenAtClosingC: { upper: null, lower: null } };
    expect(referenceSoak(blind, TARGET_C, { startC: 24, platenC: 240 })!.shiftS).toBe(0);
  });
});

describe('a trial on its reference', () => {
  const usual = [made(24, 232.2), made(24.5, 232), made(23.5, 232.4)];

  it('takes the median of the good runs: one run from 60 °C does not move it', () => {
    const { startC, platenC } = referenceConditions([...usual, made(60, 232.2)]);
    expect(startC).toBeCloseTo(24.25, 9);
    expect(platenC).toBeCloseTo(232.2, 9);
    expect(referenceConditions(usual, { startC: 20 }).startC).toBe(20);
  });

  it('a run whose soak time would move by 3.5 s (start 42 °C) is suspect; one that would move by 1.5 s is not', () => {
    const { runs, soaks } = onReference([...usual, made(42, 232.2), made(32, 232.2)], TARGET_C);
    expect(soaks[3]!.shiftS).toBeCloseTo(3.6, 0);
    expect(runs[3]!.result).toMatchObject({
      verdict: 'suspect',
      reasons: [{ code: 'off-reference', facts: { way: 'longer' } }],
    });
    expect(runs[4]!.result.verdict).toBe('good');
    expect(runs[3]!.result.soakTimeS).toBe(closedForm(42, 232.2));
  });

  it('leaves an unusable run unusable, and says it once', () => {
    const bad = made(60, 232.2);
    const unusable = { ...bad, result: { ...bad.result, verdict: 'unusable' as const } };
    const once = onReference([...usual, unusable], TARGET_C).runs;
    const twice = onReference(once, TARGET_C).runs;
    expect(twice[3]!.result.verdict).toBe('unusable');
    expect(twice[3]!.result.reasons.filter(({ code }) => code === 'off-reference')).toHaveLength(1);
  });
});

describe('recipe to be re-proved', () => {
  const recipe = {
    platenMeasuredC: { upper: 232, lower: 231 },
    platenSetPointC: { upper: 232.2, lower: 232.2 },
  };

  it('asks for it when a measured platen moved by more than 5 °C, and names the one', () => {
    const now = { measuredC: { upper: 231, lower: 225.5 }, setPointC: null };
    expect(toBeReProved(recipe, now)).toMatchObject({
      which: 'lower',
      by: 'measured',
      movedC: -5.5,
      limitC: 5,
    });
    expect(toBeReProved(recipe, { ...now, measuredC: { upper: 231, lower: 226 } })).toBeNull();
  });

  it('never compares a set point with a measured platen', () => {
    const unmeasured = { ...recipe, platenMeasuredC: { upper: null, lower: null } };
    expect(toBeReProved(unmeasured, { measuredC: { upper: 200, lower: 200 }, setPointC: null })).toBeNull();
    expect(
      toBeReProved(unmeasured, { measuredC: null, setPointC: { upper: 240, lower: 232.2 } }),
    ).toMatchObject({ by: 'set-point', which: 'upper' });
  });
});
