import type { TrialRun } from '../trial/TrialResult.ts';

/**
 * A run for a question with another target or hold than it was made for: that the press was opened before that hold was
 * done says nothing against its soak time, so a run with no other trouble counts.
 */
export function forWhatIf(run: TrialRun): TrialRun {
  const grave = run.result.reasons.filter(({ severity }) => severity !== 'note');
  const early = grave.length > 0 && grave.every(({ code }) => code === 'opened-early');
  return early && run.decision.kind === 'automatic'
    ? { ...run, decision: { kind: 'taken-in', reason: 'what if' } }
    : run;
}
