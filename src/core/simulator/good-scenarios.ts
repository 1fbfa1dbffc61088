import { createRandom } from './create-random.ts';
import { WB_150, WB_212 } from './demo-assemblies.ts';
import { NORTH, SOUTH } from './demo-presses.ts';
import { DEMO_CLOSING, DEMO_READER, DEMO_SCENARIO } from './demo-scenario.ts';
import type { Closing, Scenario, SimulatedAssembly, SimulatedPressSetup } from './Scenario.ts';
import type { ShippedScenario } from './ShippedScenario.ts';

/** Run-to-run spread (invented): start temperature and contact of the part, which make about 0.5 s of soak time. */
const START_SPREAD_C = 0.5;
const CONTACT_SPREAD = 0.012;

/** The n-th run of an assembly on a press, closed at `closedAtS`; the seed settles its spread. */
export function variedClosing(seed: number, closedAtS: number, openAfterS: number): Closing {
  const random = createRandom(seed);
  return {
    ...DEMO_CLOSING,
    closedAtS: closedAtS + Math.round(random.uniform() * 100) / 100,
    openedAtS: closedAtS + openAfterS + Math.round(random.uniform() * 100) / 100,
    startC: DEMO_CLOSING.startC + START_SPREAD_C * random.normal(),
    contactFactor: 1 + CONTACT_SPREAD * random.normal(),
  };
}

/** Seconds from press closed to opened that leave the hold of 120 s and a little. */
export function usualClosedTimeS(assembly: SimulatedAssembly): number {
  return assembly === WB_150 ? 165 : 178;
}

interface Trial {
  readonly assembly: SimulatedAssembly;
  readonly press: SimulatedPressSetup;
  readonly seed: number;
  readonly madeOn: string;
}

/** North has a contact; South has none, so there the operator's keys tell. */
const TRIALS: readonly Trial[] = [
  { assembly: WB_212, press: NORTH, seed: 2120, madeOn: '2026-03-02' },
  { assembly: WB_212, press: SOUTH, seed: 2121, madeOn: '2026-03-03' },
  { assembly: WB_150, press: NORTH, seed: 1500, madeOn: '2026-03-04' },
  { assembly: WB_150, press: SOUTH, seed: 1501, madeOn: '2026-03-05' },
];
const RUNS = 5;

function goodRun(trial: Trial, run: number): ShippedScenario {
  const { assembly, press } = trial;
  const seed = trial.seed * 10 + run;
  const closing = variedClosing(seed, DEMO_CLOSING.closedAtS, usualClosedTimeS(assembly));
  const random = createRandom(seed + 7);
  const name = `${assembly.name}-${press.name}-run-${run}`.toLowerCase();
  const hasContact = press === NORTH;
  const scenario: Scenario = {
    ...DEMO_SCENARIO,
    name,
    seed,
    madeAt: `${trial.madeOn}T${String(8 + Math.floor(run / 3)).padStart(2, '0')}:${String((run * 20) % 60).padStart(2, '0')}:00+01:00`,
    press,
    assembly,
    reader: {
      ...DEMO_READER,
      hasContact,
      // Some minutes of counting lie between the runs.
      clockStartUs: DEMO_READER.clockStartUs + run * 1_200_000_000 - (run > 2 ? 2_400_000_000 : 0),
      sequenceStart: (DEMO_READER.sequenceStart + run * 12_000) % 65_536,
    },
    closings: [closing],
    endS: closing.openedAtS + 7,
    keys: hasContact
      ? { closedDelayS: null, openedDelayS: null }
      : { closedDelayS: 0.08 + 0.12 * random.uniform(), openedDelayS: 0.1 + 0.2 * random.uniform() },
  };
  return { fileName: `${name}.dwell.txt`, scenario, expected: { verdict: 'good', reasonCodes: [] } };
}

/** Five good runs each of both assemblies on both presses. */
export const GOOD_SCENARIOS: readonly ShippedScenario[] = Object.freeze(
  TRIALS.flatMap((trial) => Array.from({ length: RUNS }, (_, index) => goodRun(trial, index + 1))),
);
