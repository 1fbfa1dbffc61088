import { expect, it } from 'vitest';
import type { RunFit } from '../../../src/core/heating-fit/run-fit.ts';
import { oddRunText } from '../../../src/core/text/trial-text.ts';
import { oddRun } from '../../../src/core/trial/odd-run.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';
import { trialRun } from '../trial/trial-run.ts';

const curve = (change: Partial<RunFit>): RunFit => ({
  plateauC: 232.2,
  timeConstantS: 40.5,
  delayS: 1,
  startC: 24,
  covariance: [],
  residualSdC: 0.2,
  runsZ: 0,
  lag1Autocorrelation: 0,
  misfitC: 0,
  verdict: 'fits',
  ...change,
});

const run = (soakTimeS: number, change: Partial<RunFit> = {}, startC = 24): TrialRun => {
  const made = trialRun(soakTimeS);
  return { ...made, result: { ...made.result, startC, fit: curve(change) } };
};

const usual = [run(53.4), run(53.6), run(53.5), run(53.3), run(53.55)];

it('finds a physical reason in the curve: plateau 8 °C lower, time constant 5 s longer, start of the curve 3 s later', () => {
  const odd = oddRun([...usual, run(60, { plateauC: 224.2, timeConstantS: 45.5, delayS: 4 })])!;
  const kinds = odd.causes.map(({ kind }) => kind);
  expect(kinds).toEqual(expect.arrayContaining(['plateau', 'time-constant', 'onset-delay']));
  expect(odd.causes.find(({ kind }) => kind === 'plateau')).toMatchObject({
    differenceC: expect.closeTo(-8, 9),
  });
  expect(oddRunText(odd)).toContain('levels out 14.4 °F (8 °C) colder');
});

it('says what a warmer start explains by the other runs’ own curves: 10 °C · −40.5/208.2 = −1.95 s', () => {
  const odd = oddRun([...usual, run(50, {}, 34)])!;
  const cause = odd.causes.find(({ kind }) => kind === 'start');
  expect(cause).toMatchObject({ differenceC: 10, explainsS: expect.closeTo((-10 * 40.5) / 208.2, 6) });
});

it('a flag alone changes no verdict', () => {
  const odd = oddRun([...usual, run(60)])!;
  expect(odd.run.result.verdict).toBe('good');
  expect(odd.causes).toEqual([]);
});
