import type { RunResult } from '../../../src/core/run/RunResult.ts';
import { analyseEntries } from '../../../src/core/session/analyse-entries.ts';
import { DEMO_CLOSING, DEMO_SCENARIO } from '../../../src/core/simulator/demo-scenario.ts';
import { variedClosing } from '../../../src/core/simulator/good-scenarios.ts';
import { simulateRecording } from '../../../src/core/simulator/simulate-recording.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { runRules } from '../../../src/program/options/run-rules.ts';

export const TARGET_C = (350 - 32) / 1.8;
const { press } = DEMO_SCENARIO;
/** Mean set point of the simulated press's platens. */
export const PLATEN_MEAN_C = (press.upper.setPointC + press.lower.setPointC) / 2;

/** One simulated closing (conduction through steel, ring and film; no first-order curve in it), measured as a recording. */
export function simulatedRun(
  seed: number,
  {
    targetC = TARGET_C,
    platenC = PLATEN_MEAN_C,
    startC,
  }: { readonly targetC?: number; readonly platenC?: number; readonly startC?: number } = {},
): RunResult {
  const varied = variedClosing(seed, DEMO_CLOSING.closedAtS, 110);
  const moved = platenC - PLATEN_MEAN_C;
  const scenario = {
    ...DEMO_SCENARIO,
    seed,
    press: {
      ...press,
      upper: { ...press.upper, setPointC: press.upper.setPointC + moved },
      lower: { ...press.lower, setPointC: press.lower.setPointC + moved },
    },
    closings: [
      startC === undefined ? varied : { ...varied, startC: varied.startC - DEMO_CLOSING.startC + startC },
    ],
    endS: varied.openedAtS + 5,
  };
  const { head, entries } = simulateRecording(scenario);
  const { results } = analyseEntries(entries, {
    decoder: createReaderDecoder({}),
    roles: head.roles,
    rules: runRules({}, { targetC, holdS: 30 }),
  });
  const [first] = results;
  if (first === undefined) throw new Error('the simulated recording has no run');
  return first;
}
