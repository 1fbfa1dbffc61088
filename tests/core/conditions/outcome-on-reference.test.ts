import { expect, it } from 'vitest';
import { outcomeJson } from '../../../src/core/result/outcome-json.ts';
import { type OutcomeSettings, trialOutcome } from '../../../src/core/result/trial-outcome.ts';
import { outcomeLines } from '../../../src/core/text/outcome-text.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';
import { trialRun } from '../trial/trial-run.ts';

const TARGET_C = (350 - 32) / 1.8;
const settings: OutcomeSettings = {
  rule: 'mean',
  targetC: TARGET_C,
  holdS: 120,
  marginS: 0,
  timerStepS: 1,
  timerOffsetS: 0,
  timerStartsAt: 'closing',
};

/** 24 → 232.2 °C, τ 40.5 s, from another start: closed form. */
function run(startC: number, decision: TrialRun['decision'] = { kind: 'automatic' }): TrialRun {
  const made = trialRun(40.5 * Math.log((232.2 - startC) / (232.2 - TARGET_C)), { decision });
  const fit = {
    plateauC: 232.2,
    timeConstantS: 40.5,
    delayS: 0,
    startC,
    covariance: [],
    residualSdC: 0.2,
    runsZ: 0,
    lag1Autocorrelation: 0,
    misfitC: 0,
    verdict: 'fits' as const,
  };
  return { ...made, result: { ...made.result, startC, fit } };
}

const usual = [run(23.5), run(24), run(24.5)];

it('a run from 45 °C does not enter the mean; its measured soak time stands, the one at reference beside it', () => {
  const outcome = trialOutcome([...usual, run(45)], settings);
  expect(outcome.statistics.runs).toBe(3);
  expect(outcome.leftOut).toEqual([null, null, null, 'suspect']);
  const { runs } = outcomeJson(outcome, 'F') as {
    runs: { soakTimeS: number; soakAtReferenceS: number; reasonCodes: string[] }[];
  };
  expect(runs[3]!.reasonCodes).toEqual(['off-reference']);
  expect(runs[3]!.soakTimeS).toBeCloseTo(40.5 * Math.log((232.2 - 45) / (232.2 - TARGET_C)), 9);
  // Median start of the four: 24.25 °C.
  expect(runs[3]!.soakAtReferenceS).toBeCloseTo(40.5 * Math.log((232.2 - 24.25) / (232.2 - TARGET_C)), 9);
  expect(outcomeLines(outcome, 'F').join('\n')).toContain('at reference conditions');
});

it('counts when a person takes it in, and when more than one trial is looked at', () => {
  const taken = run(45, { kind: 'taken-in', reason: 'wanted warm' });
  expect(trialOutcome([...usual, taken], settings).statistics.runs).toBe(4);
  expect(trialOutcome([...usual, run(45)], { ...settings, reference: null }).statistics.runs).toBe(4);
});

it('a platen offset of ±3 °C enters the budget by the curve’s own −0.535 s/°C, not by the slope: 3 · 0.535 ÷ √3 = 0.93 s', () => {
  const { budget } = trialOutcome(usual, {
    ...settings,
    commonParts: [{ code: 'platen-offset', stated: { limitC: 3 } }],
  });
  const line = budget!.lines.find(({ code }) => code === 'platen-offset')!;
  expect(line.standardUncertaintyS).toBeCloseTo((3 * 0.535) / Math.sqrt(3), 2);
});
