import type { OverlayInput } from '../figure/OverlayInput.ts';
import { runTrace, timedChannel } from '../figure/run-trace.ts';
import type { TrialReportInput } from './TrialReportInput.ts';

type OverlaySource = Pick<TrialReportInput, 'outcome' | 'recordingOfRun' | 'recordings' | 'unit'>;

/** The trial's runs as the overlay draws them, aligned at press closed; a run without one cannot be aligned. */
export function overlayOf(
  { outcome, recordingOfRun, recordings, unit }: OverlaySource,
  simulated: boolean,
): OverlayInput {
  return {
    runs: outcome.runs.flatMap(({ result }, index) => {
      const recording = recordings[recordingOfRun[index] ?? -1];
      if (recording === undefined || result.pressClosed === null) return [];
      const trace = runTrace(recording.trace, result, String(index + 1));
      return [
        {
          label: String(index + 1),
          counts: outcome.leftOut[index] === null,
          soakTimeS: result.soakTimeS,
          slopeCPerS: result.crossing?.slopeCPerS ?? null,
          points: timedChannel(trace, result)?.points ?? [],
        },
      ];
    }),
    targetC: outcome.settings.targetC,
    holdS: outcome.settings.holdS,
    unit,
    simulated,
  };
}
