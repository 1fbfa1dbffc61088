import { AMBIENT_KEY } from '../recording/head-ambient.ts';
import type { RecordingHead } from '../recording/RecordingEntry.ts';
import type { ClosingTruth } from './create-closing-truth.ts';
import type { Scenario } from './Scenario.ts';

/** Head of a simulated recording, marked as such, with what really happened in its first closing. */
export function simulatedHead(
  scenario: Scenario,
  closings: readonly ClosingTruth[],
  firstReadingS: number,
): RecordingHead {
  const first = closings[0];
  const fromFirstReading = (timeS: number | null | undefined): number | null =>
    timeS === null || timeS === undefined ? null : Math.round((timeS - firstReadingS) * 1e6) / 1e6;
  return {
    recordingId: `simulated-${scenario.name}`,
    madeAt: scenario.madeAt,
    program: 'Dwellwright simulator',
    roles: ['bond-line', 'bond-line-outer', 'upper-platen', 'lower-platen'],
    simulated: true,
    pressName: scenario.press.name,
    assemblyName: scenario.assembly.name,
    targetC: scenario.targetC,
    holdS: scenario.holdS,
    platenSetPointC: { upper: scenario.press.upper.setPointC, lower: scenario.press.lower.setPointC },
    truth: {
      seed: scenario.seed,
      pressClosedS: fromFirstReading(first?.pressClosedS),
      bondLineCrossingS: fromFirstReading(first?.bondLineCrossingS),
      probeCrossingS: fromFirstReading(first?.probeCrossingS),
      openedS: fromFirstReading(first?.openedS),
      failure: scenario.failure,
    },
    further: { [AMBIENT_KEY]: String(scenario.ambientC) },
  };
}
