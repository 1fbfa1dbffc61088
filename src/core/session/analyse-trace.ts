import type { ClockComparison, Reading, ReadingValue } from '../reading/StreamEvent.ts';
import type { RunResult } from '../run/RunResult.ts';
import { READINGS_A_CHECKPOINT } from './clock-checkpoints.ts';
import { createRunStage, type RunStageConfig } from './create-run-stage.ts';
import { type DecodedTrace, TRACE_FAULTS } from './DecodedTrace.ts';
import { noRunResult } from './no-run-result.ts';

const UNKNOWN: ClockComparison = Object.freeze({ driftPpm: null, standardUncertaintyPpm: null, overS: 0 });
const MISSING: ReadingValue = Object.freeze({ kind: 'missing' });
const FAULTS: readonly ReadingValue[] = TRACE_FAULTS.map((fault) => Object.freeze({ kind: 'fault', fault }));

/** Runs of a recording decoded before, by any rules; the same as its replay to the last digit. */
export function analyseTrace(
  trace: DecodedTrace,
  config: Omit<RunStageConfig, 'clock'>,
): readonly RunResult[] {
  const { timesS, others } = trace;
  let readings = 0;
  let ended = false;
  const stage = createRunStage({
    ...config,
    clock: () => (ended ? (trace.clocks.at(-1) ?? UNKNOWN) : clockAfter(trace, readings)),
  });
  let next = 0;
  for (let index = 0; index <= timesS.length; index += 1) {
    for (
      let other = others[next];
      other !== undefined && other.readingsBefore <= index;
      other = others[next]
    ) {
      stage.accept(other.event);
      next += 1;
    }
    if (index === timesS.length) break;
    readings = index + 1;
    stage.accept({ kind: 'reading', reading: readingAt(trace, index) });
  }
  ended = true;
  stage.finish();
  return stage.results.length > 0 ? stage.results : [noRunResult(timesS.length, timesS.at(-1) ?? 0)];
}

function readingAt(trace: DecodedTrace, index: number): Reading {
  const { channels, temperaturesC, kinds } = trace;
  const values: ReadingValue[] = new Array(channels);
  for (let channel = 0, at = index * channels; channel < channels; channel += 1, at += 1) {
    const kind = kinds[at] as number;
    if (kind === 0) values[channel] = { kind: 'temperature', temperatureC: temperaturesC[at] as number };
    else values[channel] = kind === 1 ? MISSING : (FAULTS[kind - 2] ?? MISSING);
  }
  return { timeS: trace.timesS[index] as number, arrivedUs: trace.arrivedUs[index] as number, values };
}

/** The latest checkpoint after so many readings; before the first one nothing is known. */
function clockAfter({ clocks }: DecodedTrace, readings: number): ClockComparison {
  return clocks[Math.floor(readings / READINGS_A_CHECKPOINT) - 1] ?? UNKNOWN;
}
