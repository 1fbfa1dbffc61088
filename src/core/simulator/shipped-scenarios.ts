import { GOOD_SCENARIOS } from './good-scenarios.ts';
import { PRESS_FAILURE_SCENARIOS } from './press-failure-scenarios.ts';
import { PROBE_FAILURE_SCENARIOS } from './probe-failure-scenarios.ts';
import type { ShippedScenario } from './ShippedScenario.ts';
import { WIRE_FAILURE_SCENARIOS } from './wire-failure-scenarios.ts';

/** Every recording that ships in `recordings/`, made by `simulateRecording` from its scenario. */
export const SHIPPED_SCENARIOS: readonly ShippedScenario[] = Object.freeze([
  ...GOOD_SCENARIOS,
  ...PROBE_FAILURE_SCENARIOS,
  ...PRESS_FAILURE_SCENARIOS,
  ...WIRE_FAILURE_SCENARIOS,
]);
