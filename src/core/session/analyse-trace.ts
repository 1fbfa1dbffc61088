import type { ClockComparison, Reading, ReadingValue } from '../reading/StreamEvent.ts';
import type { RunResult } from '../run/RunResult.ts';
import { createRunStage, type RunStageConfig } from './create-run-stage.ts';
import { type DecodedTrace, TRACE_FAULTS } from './DecodedTrace.ts';
import { noRunResult } from './no-run-result.ts';

const MISSING: ReadingValue = Object.freeze({ kind: 'missing' });
const FAULTS: readonly ReadingValue[] = TRACE_FAULTS.map((fault) => Object.freeze({ kind: 'fault', fault }));

/** Runs of a recording decoded before, by any rules; the same as its replay to the last digit. */
export function analyseTrace(
  trace: DecodedTrace,
  config: Omit<RunStageConfig, 'clock'>,
): readonly RunResult[] {
  const { timesS, others } = trace;
  let readings = 0;
  const stage = createRunStage({ ...config, clock: () => clockAfter(trace, readings) });
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

function clockAfter(trace: DecodedTrace, readings: number): ClockComparison {
  const drift = trace.driftPpm[readings - 1] ?? Number.NaN;
  const uncertainty = trace.driftUncertaintyPpm[readings - 1] ?? Number.NaN;
  return {
    driftPpm: Number.isNaN(drift) ? null : drift,
    standardUncertaintyPpm: Number.isNaN(uncertainty) ? null : uncertainty,
    overS: trace.timesS[readings - 1] ?? 0,
  };
}
