import { WB_212 } from './demo-assemblies.ts';
import { NORTH } from './demo-presses.ts';
import { DEMO_SCENARIO } from './demo-scenario.ts';
import { usualClosedTimeS, variedClosing } from './good-scenarios.ts';
import type { Scenario, SimulatedAssembly, SimulatedPressSetup } from './Scenario.ts';

/** Seconds from opening to the next closing: take the part out, lay the next, let the platens recover. */
const BETWEEN_CLOSINGS_S = 75;
const FIRST_CLOSING_S = 12;

/**
 * A whole trial in one go: `runs` closings of an assembly on a press, each with a fresh part at room temperature, with the
 * demo's run-to-run spread. Worked by hand, the closings give the parts one after the other and their times are not used.
 */
export function demoTrialScenario({
  press = NORTH,
  assembly = WB_212,
  runs = 5,
  seed = 2120,
}: {
  readonly press?: SimulatedPressSetup;
  readonly assembly?: SimulatedAssembly;
  readonly runs?: number;
  readonly seed?: number;
} = {}): Scenario {
  const closedTimeS = usualClosedTimeS(assembly);
  const closings = Array.from({ length: runs }, (_, index) =>
    variedClosing(
      seed * 10 + index + 1,
      FIRST_CLOSING_S + index * (closedTimeS + BETWEEN_CLOSINGS_S),
      closedTimeS,
    ),
  );
  const lastOpenedS = closings.at(-1)?.openedAtS ?? 0;
  return {
    ...DEMO_SCENARIO,
    name: `${assembly.name}-${press.name}-trial`.toLowerCase(),
    seed,
    press,
    assembly,
    closings,
    endS: lastOpenedS + 20,
  };
}
