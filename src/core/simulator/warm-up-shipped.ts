import { formatRecording } from '../recording/format-recording.ts';
import type { SimulatedRecording } from './simulate-recording.ts';
import { simulateWarmUpRecording } from './warm-up-recording.ts';
import { WARM_UP_SCENARIOS } from './warm-up-scenarios.ts';
import { SURVEY_SCENARIOS, simulateSurveyRecording } from './warm-up-survey.ts';

export interface ShippedPlatenRecording {
  readonly name: string;
  readonly fileName: string;
  readonly about: string;
  /** With its own seed unless another is given. */
  readonly make: (seed?: number) => SimulatedRecording;
}

/** Recordings of platens that ship in `recordings/`: three warm-ups of each press, a survey of each lower platen. */
export const SHIPPED_PLATEN_RECORDINGS: readonly ShippedPlatenRecording[] = Object.freeze([
  ...WARM_UP_SCENARIOS.map((scenario) => ({
    name: scenario.name,
    fileName: `${scenario.name}.dwell.txt`,
    about: 'warm-up from cold, one cold part',
    make: (seed = scenario.seed) => simulateWarmUpRecording({ ...scenario, seed }),
  })),
  ...SURVEY_SCENARIOS.map((scenario) => ({
    name: scenario.name,
    fileName: `${scenario.name}.dwell.txt`,
    about: 'platen survey, eight probes',
    make: (seed = scenario.seed) => simulateSurveyRecording({ ...scenario, seed }),
  })),
]);

/** The text of one of them, made anew; byte for byte what lies in `recordings/`. */
export function platenRecordingText({ make }: ShippedPlatenRecording): string {
  const { head, entries } = make();
  return [...formatRecording(head, entries)].join('');
}
