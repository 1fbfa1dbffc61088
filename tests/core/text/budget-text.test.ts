import { describe, expect, it } from 'vitest';
import { budgetLines, budgetSentence, commonPartSentence } from '../../../src/core/text/budget-text.ts';
import type { CommonPart } from '../../../src/core/uncertainty/SoakTimeBudget.ts';
import { soakTimeBudget } from '../../../src/core/uncertainty/soak-time-budget.ts';
import { trialRun } from '../trial/trial-run.ts';

const PROBE: CommonPart = {
  code: 'thermocouple-tolerance',
  stated: { limitC: 2.2 },
  remedy: { action: 'calibrate-probe', stated: { standardUncertaintyC: 0.375 } },
};
const runs = [53, 53.5, 54].map((soak) => trialRun(soak));

describe('budget in words', () => {
  it('largest part first, with of which under the run-to-run line and what shrinks the probe', () => {
    const lines = budgetLines(soakTimeBudget(runs, [PROBE]));
    expect(lines[0]).toBe(
      'probe within its tolerance: standard 0.93 s, expanded 1.53 s, 91 % of the variance (calibrate the probe: 1.5 s → 0.5 s, both expanded)',
    );
    expect(lines[1]).toBe('run to run: standard 0.29 s, expanded 1.24 s, 9 % of the variance');
    expect(lines[2]).toBe('  of which crossing and closing of each run: standard 0.06 s, expanded 0.12 s');
    expect(lines[3]).toContain('by drawing the parts (JCGM 101)');
  });

  it('the common part stands beside a dwell as a line of its own: +2 s for 1.45 s', () => {
    expect(commonPartSentence(soakTimeBudget(runs, [PROBE]))).toContain(
      '+2 s for what is common to all runs (1.45 s, one-sided 95 %)',
    );
    expect(commonPartSentence(soakTimeBudget(runs, []))).toContain('no part common to all runs was stated');
  });

  it('one sentence for the technician names the largest part, and an unknown spread', () => {
    expect(budgetSentence(soakTimeBudget(runs, []))).toBe(
      'soak time 53.50 s ± 1.24 s (95 %), most of it from: run to run',
    );
    expect(budgetSentence(soakTimeBudget([trialRun(53.5)], [PROBE]))).toContain('unknown and not in it');
  });
});
