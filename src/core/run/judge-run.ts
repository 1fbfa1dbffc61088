import { RUN_CHECKS } from './checks/run-checks.ts';
import type { RunFacts } from './RunFacts.ts';
import type { RunReason, Verdict } from './RunResult.ts';

const GRAVITY = { unusable: 0, suspect: 1, note: 2 } as const;

/** Runs every check; the gravest reason decides the verdict. Reasons come gravest first, notes last. */
export function judgeRun(facts: RunFacts): {
  readonly verdict: Verdict;
  readonly reasons: readonly RunReason[];
} {
  const reasons = RUN_CHECKS.flatMap((check) => check(facts) ?? []).sort(
    (a, b) => GRAVITY[a.severity] - GRAVITY[b.severity],
  );
  const gravest = reasons[0]?.severity ?? 'note';
  return { verdict: gravest === 'note' ? 'good' : gravest, reasons };
}
