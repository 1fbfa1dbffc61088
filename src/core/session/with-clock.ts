import type { ClockComparison } from '../reading/StreamEvent.ts';
import type { RunReason, RunResult } from '../run/RunResult.ts';

/** A quartz clock is good to some ten ppm, an oscillator without one to a few per cent. Common practice, no source. */
const SUSPECT_PPM = 5_000;
/** Beyond three times too fast or slow it is no drift: the reader counts in another unit, or is played back. */
const APART_PPM = 2_000_000;

/**
 * Budgets the difference between the reader's clock and the host's over the recording so far: a soak time is
 * uncertain by |drift| · soak (its own uncertainty included), as a standard uncertainty; from 0.5 % on the run is suspect.
 */
export function withClock(result: RunResult, clock: ClockComparison): RunResult {
  const { driftPpm, standardUncertaintyPpm } = clock;
  const { soakTimeS, soakTimeStandardUncertaintyS } = result;
  if (driftPpm === null || soakTimeS === null || soakTimeStandardUncertaintyS === null) return result;
  // Slower than a third of the host's pace is as far apart as faster than three times it.
  if (driftPpm > APART_PPM || driftPpm < -666_667)
    return judged(result, clockReason('clock-apart', driftPpm));
  const driftS = Math.hypot(driftPpm, standardUncertaintyPpm ?? 0) * 1e-6 * soakTimeS;
  const widened = {
    ...result,
    soakTimeStandardUncertaintyS: Math.hypot(soakTimeStandardUncertaintyS, driftS),
  };
  return Math.abs(driftPpm) > SUSPECT_PPM ? judged(widened, clockReason('clock-drift', driftPpm)) : widened;
}

function clockReason(code: 'clock-drift' | 'clock-apart', driftPpm: number): RunReason {
  return {
    code,
    severity: code === 'clock-drift' ? 'suspect' : 'note',
    facts: { driftPpm: Math.round(driftPpm) },
  };
}

/** Graver reasons stand first; a suspect reason makes a good run suspect. */
function judged(result: RunResult, reason: RunReason): RunResult {
  const graver = result.reasons.filter((one) => one.severity !== 'note');
  const notes = result.reasons.filter((one) => one.severity === 'note');
  if (reason.severity === 'note') return { ...result, reasons: [...graver, ...notes, reason] };
  const verdict = result.verdict === 'good' ? 'suspect' : result.verdict;
  return { ...result, verdict, reasons: [...graver, reason, ...notes] };
}
