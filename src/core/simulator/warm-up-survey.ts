import { AMBIENT_KEY } from '../recording/head-ambient.ts';
import { createRandom } from './create-random.ts';
import { PLATEN_SET_POINT_C } from './demo-presses.ts';
import type { SimulatedRecording } from './simulate-recording.ts';
import { entriesOf, sent, type TimedLine, WARM_UP_NOISE_C } from './warm-up-recording.ts';

/** A survey of one platen with eight probes: each place's lasting difference from the platen's level, °C. */
export interface SurveyScenario {
  readonly name: string;
  readonly seed: number;
  readonly madeAt: string;
  readonly pressName: string;
  readonly side: 'upper' | 'lower';
  readonly levelC: number;
  readonly placesMm: readonly (readonly [number, number])[];
  readonly differencesC: readonly number[];
  /** Swing that all places share, °C, and its period, s. */
  readonly rippleC: number;
  readonly ripplePeriodS: number;
  readonly endS: number;
}

/** Platens 300 mm square: corners, middles of two edges, centre, and between. mm from the front left corner. */
export const SURVEY_PLACES_MM = [
  [30, 30],
  [270, 30],
  [30, 270],
  [270, 270],
  [150, 30],
  [150, 270],
  [150, 150],
  [220, 150],
] as const;

/** North's lower platen is even; South's has lost a heater rod at its front right. Invented. */
export const SURVEY_SCENARIOS: readonly SurveyScenario[] = Object.freeze([
  {
    name: 'survey-north-lower',
    seed: 3300,
    madeAt: '2026-03-19T09:00:00+01:00',
    pressName: 'North',
    side: 'lower',
    levelC: PLATEN_SET_POINT_C - 0.6,
    placesMm: SURVEY_PLACES_MM,
    differencesC: [-1.1, -0.8, -0.9, -1.3, 0.2, 0.1, 1.6, 1.1],
    rippleC: 0.2,
    ripplePeriodS: 30,
    endS: 900,
  },
  {
    name: 'survey-south-lower',
    seed: 3301,
    madeAt: '2026-03-19T13:00:00+01:00',
    pressName: 'South',
    side: 'lower',
    levelC: PLATEN_SET_POINT_C - 4,
    placesMm: SURVEY_PLACES_MM,
    differencesC: [0.4, -6.2, 1.2, -0.6, -2.1, 1.5, 2.4, -1.9],
    rippleC: 0.4,
    ripplePeriodS: 45,
    endS: 900,
  },
]);

/** The recording of a survey, its true places and differences in the head. Same scenario, same bytes. */
export function simulateSurveyRecording(scenario: SurveyScenario): SimulatedRecording {
  const random = createRandom(scenario.seed);
  const lines: TimedLine[] = [];
  for (let timeS = 0; timeS <= scenario.endS; timeS++) {
    const swingC = scenario.rippleC * Math.sin((2 * Math.PI * timeS) / scenario.ripplePeriodS);
    lines.push({
      kind: 'sample',
      timeS,
      channels: scenario.differencesC.map((differenceC) =>
        sent(scenario.levelC + differenceC + swingC + WARM_UP_NOISE_C * random.normal()),
      ),
    });
  }
  const { differencesC } = scenario;
  const spreadC = Math.max(...differencesC) - Math.min(...differencesC);
  return {
    head: {
      recordingId: `simulated-${scenario.name}`,
      madeAt: scenario.madeAt,
      program: 'Dwellwright simulator',
      roles: differencesC.map(() => `${scenario.side}-platen` as const),
      simulated: true,
      pressName: scenario.pressName,
      platenSetPointC: { upper: PLATEN_SET_POINT_C, lower: PLATEN_SET_POINT_C },
      further: {
        [AMBIENT_KEY]: '23',
        positions: scenario.placesMm.map(([x, y]) => `${x}/${y}mm`).join(', '),
        'truth-level-c': String(scenario.levelC),
        'truth-differences-c': differencesC.join(', '),
        'truth-spread-c': String(Math.round(spreadC * 1000) / 1000),
      },
    },
    entries: entriesOf({ seed: scenario.seed, rateHz: 1, hasContact: false }, lines, differencesC.length),
  };
}
