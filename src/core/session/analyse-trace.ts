import type { ClockComparison } from '../reading/StreamEvent.ts';
import type { RunResult } from '../run/RunResult.ts';
import { READINGS_A_CHECKPOINT } from './clock-checkpoints.ts';
import { correctedColumns } from './corrected-columns.ts';
import { createRunStage, type RunStageConfig, usedCorrections } from './create-run-stage.ts';
import type { DecodedTrace } from './DecodedTrace.ts';
import { noRunResult } from './no-run-result.ts';

const UNKNOWN: ClockComparison = Object.freeze({ driftPpm: null, standardUncertaintyPpm: null, overS: 0 });

/** Runs of a recording decoded before, by any rules; the same as its replay to the last digit. */
export function analyseTrace(
  trace: DecodedTrace,
  config: Omit<RunStageConfig, 'clock'>,
): readonly RunResult[] {
  const corrections = usedCorrections(config.probeCorrections);
  const columns = corrections === null ? trace : correctedColumns(trace, corrections);
  const { timesS, others } = trace;
  let readings = 0;
  let ended = false;
  const stage = createRunStage({
    ...config,
    clock: () => (ended ? (trace.clocks.at(-1) ?? UNKNOWN) : clockAfter(trace, readings)),
  });
  let next = 0;
  let nextAt = others[0]?.readingsBefore ?? Number.POSITIVE_INFINITY;
  for (let index = 0; index <= timesS.length; index += 1) {
    while (nextAt <= index) {
      const other = others[next];
      if (other !== undefined) stage.accept(other.event);
      next += 1;
      nextAt = others[next]?.readingsBefore ?? Number.POSITIVE_INFINITY;
    }
    if (index === timesS.length) break;
    readings = index + 1;
    stage.acceptRow(columns, index);
  }
  ended = true;
  stage.finish();
  return stage.results.length > 0 ? stage.results : [noRunResult(timesS.length, timesS.at(-1) ?? 0)];
}

/** The latest checkpoint after so many readings; before the first one nothing is known. */
function clockAfter({ clocks }: DecodedTrace, readings: number): ClockComparison {
  return clocks[Math.floor(readings / READINGS_A_CHECKPOINT) - 1] ?? UNKNOWN;
}
