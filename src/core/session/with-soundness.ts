import type { RecordingSoundness } from '../recording/RecordingEntry.ts';
import type { RunReason, RunResult } from '../run/RunResult.ts';

/** Adds a note to a run whose recording did not end as it should: cut short, altered or broken. */
export function withSoundness(result: RunResult, soundness: RecordingSoundness): RunResult {
  if (soundness.kind === 'sound') return result;
  const reason: RunReason = {
    code: soundness.kind === 'not-closed' ? 'recording-not-closed' : 'recording-altered',
    severity: 'note',
    facts: soundness.kind === 'broken' ? { lineNumber: soundness.lineNumber } : {},
  };
  return { ...result, reasons: [...result.reasons, reason] };
}
