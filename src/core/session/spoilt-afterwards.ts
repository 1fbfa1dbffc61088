import type { OperatorMark } from '../reading/StreamEvent.ts';
import type { RunReason, RunResult } from '../run/RunResult.ts';

/**
 * A run marked as spoilt after it had finished: unusable, with the reason first; with the undo of that mark, as it was.
 * Null where the mark says nothing about a finished run. `before` is the run without any such mark.
 */
export function spoiltAfterwards(mark: OperatorMark, before: RunResult): RunResult | null {
  if (mark.kind === 'undo') return mark.what === 'spoilt' ? before : null;
  if (mark.kind !== 'spoilt') return null;
  const reason: RunReason = { code: 'spoilt', severity: 'unusable', facts: { why: mark.reason } };
  const others = before.reasons.filter((one) => one.code !== 'spoilt');
  return { ...before, verdict: 'unusable', reasons: [reason, ...others] };
}
