import { describe, expect, it } from 'vitest';
import { fittedSoakS, soakSensitivities } from '../../../src/core/heating-fit/fitted-soak-s.ts';
import type { RunFit } from '../../../src/core/heating-fit/run-fit.ts';
import type { RunResult } from '../../../src/core/run/RunResult.ts';
import { soakVariance } from '../../../src/core/what-if/soak-variance.ts';
import { type WhatIfInput, whatIf } from '../../../src/core/what-if/what-if.ts';
import { trialRun } from '../trial/trial-run.ts';

/** The trade's example: 24 °C, platens 232.2 °C, τ 40.5 s reaches 176.67 °C after 53.5 s (domain example, closed form). */
const fit: RunFit = {
  plateauC: 232.2,
  timeConstantS: 40.5,
  delayS: 0,
  startC: 24,
  covariance: [
    [0.01, 0, 0],
    [0, 0.0025, 0],
    [0, 0, 0.0016],
  ],
  residualSdC: 0.2,
  runsZ: 0,
  lag1Autocorrelation: 0,
  misfitC: 0,
  verdict: 'fits',
};
const TARGET_C = (350 - 32) / 1.8;

function made(soakTimeS: number, change: Partial<RunResult> = {}): RunResult {
  return {
    ...trialRun(soakTimeS).result,
    fit,
    peakC: 230,
    platenAtClosingC: { upper: 233, lower: 231.4 },
    ...change,
  };
}

const input = (change: Partial<WhatIfInput>): WhatIfInput => ({
  runs: [made(53.47), made(53.9), made(53.1)],
  targetC: TARGET_C,
  holdS: 120,
  probeExpandedC: 2.09,
  setPointC: null,
  wish: {},
  ...change,
});

const estimate = (change: Partial<WhatIfInput>) => {
  const answer = whatIf(input(change));
  if (answer.kind !== 'estimate') throw new Error(answer.refusal.code);
  return answer.estimate;
};

describe('fitted soak time', () => {
  it('reaches 176.67 °C after 53.5 s from 24 °C with platens of 232.2 °C and τ 40.5 s', () => {
    expect(fittedSoakS(fit, { targetC: TARGET_C })).toBeCloseTo(53.5, 1);
  });

  it('changes by −0.19 s/°C with the start and −0.54 s/°C with the platens (small differences agree to 1 %)', () => {
    const { perStartC, perPlatenC } = soakSensitivities(fit, TARGET_C);
    expect(perStartC).toBeCloseTo(-0.1945, 4);
    expect(perPlatenC).toBeCloseTo(-0.535, 3);
    const soak = fittedSoakS(fit, { targetC: TARGET_C })!;
    expect((fittedSoakS(fit, { targetC: TARGET_C, startC: 24.1 })! - soak) / 0.1 / perStartC).toBeCloseTo(
      1,
      2,
    );
    expect((fittedSoakS(fit, { targetC: TARGET_C, plateauC: 232.3 })! - soak) / 0.1 / perPlatenC).toBeCloseTo(
      1,
      2,
    );
  });

  it('has the variance that the GUM gives for independent parameters', () => {
    const change = { targetC: TARGET_C, plateauC: 232.2, startC: 24 };
    const log = Math.log((232.2 - 24) / (232.2 - TARGET_C));
    const expected = 0.535 ** 2 * 0.01 + log ** 2 * 0.0025 + 0.0016;
    expect(soakVariance(fit, change)).toBeCloseTo(expected, 4);
  });
});

describe('what if', () => {
  it('nothing is changed: the measured mean, 53.49 s, and no change', () => {
    const { soakS, changeS } = estimate({ wish: { targetC: TARGET_C } });
    expect(soakS).toBeCloseTo((53.47 + 53.9 + 53.1) / 3, 9);
    expect(changeS).toBeCloseTo(0, 9);
  });

  it('target 185 °C adds τ·ln((Tp − 176.67)/(Tp − 185)) = 6.59 s', () => {
    expect(estimate({ wish: { targetC: 185 } }).changeS).toBeCloseTo(
      40.5 * Math.log((232.2 - TARGET_C) / (232.2 - 185)),
      9,
    );
    expect(estimate({ wish: { targetC: 185 } }).changeS).toBeCloseTo(6.59, 1);
  });

  it('platens 4 °C hotter than measured move the plateau by 4 °C', () => {
    const expected =
      fittedSoakS(fit, { targetC: TARGET_C, plateauC: 236.2 })! - fittedSoakS(fit, { targetC: TARGET_C })!;
    expect(estimate({ wish: { platenC: 236.2 } }).changeS).toBeCloseTo(expected, 9);
  });

  it('refuses a target so near the platens that the probe leaves more than a tenth of the hold open', () => {
    const answer = whatIf(input({ wish: { targetC: 228 } }));
    expect(answer).toMatchObject({ kind: 'refused', refusal: { code: 'target-too-close', limitS: 12 } });
    // The limit itself: slope 2.09/12 = 0.174 °C/s is 7.05 °C below the plateau.
    expect(whatIf(input({ wish: { targetC: 232.2 - 7.0 } })).kind).toBe('refused');
    expect(whatIf(input({ wish: { targetC: 232.2 - 7.1 } })).kind).toBe('estimate');
  });

  it.each([
    ['target-not-reached', { wish: { targetC: 240 } }],
    ['target-below-start', { wish: { startC: 190 } }],
    ['no-fit', { runs: [made(53, { fit: null })], wish: { targetC: 180 } }],
    ['no-fit', { runs: [], wish: { targetC: 180 } }],
    [
      'platens-unknown',
      { runs: [made(53, { platenAtClosingC: { upper: null, lower: null } })], wish: { platenC: 230 } },
    ],
  ] as const)('refuses with %s', (code, change) => {
    expect(whatIf(input(change))).toMatchObject({ kind: 'refused', refusal: { code } });
  });

  it('says when it goes beyond what the runs saw, rests on one run, or on a curve that does not fit', () => {
    const codes = (change: Partial<WhatIfInput>) => estimate(change).cautions.map(({ code }) => code);
    expect(codes({ runs: [made(53)], wish: { targetC: 180 } })).toContain('one-run');
    expect(
      codes({ runs: [made(53, { peakC: 200 }), made(54, { peakC: 201 })], wish: { targetC: 205 } }),
    ).toContain('above-seen');
    const wrong = [made(53, { fit: { ...fit, verdict: 'wrong-model' } }), made(54)];
    expect(codes({ runs: wrong, wish: { targetC: 185 } })).toContain('wrong-model');
    expect(estimate({ runs: wrong, wish: { targetC: 185 } }).parts.modelS).toBeGreaterThan(
      estimate({ wish: { targetC: 185 } }).parts.modelS,
    );
    expect(codes({ wish: { startC: 60 } })).toContain('far');
  });
});
