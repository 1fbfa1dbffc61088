import type { ClosingTruth } from './create-closing-truth.ts';
import { PHYSICS_STEP_S } from './create-press-simulation.ts';
import { createRandom } from './create-random.ts';
import { createScheduledPress } from './create-scheduled-press.ts';
import type { Scenario } from './Scenario.ts';

/** What really happened, one value per 0.01 s: times in s of the simulation, temperatures in °C. */
export interface SimulatedTrace {
  readonly timesS: Float64Array;
  readonly bondLineC: Float64Array;
  readonly outerEdgeC: Float64Array;
  readonly bondLineProbeC: Float64Array;
  readonly outerEdgeProbeC: Float64Array;
  readonly upperPlatenC: Float64Array;
  readonly lowerPlatenC: Float64Array;
  readonly closings: readonly ClosingTruth[];
}

/** Runs a scenario's physics without reader, noise or wire. The same scenario gives the same trace. */
export function simulateRun(scenario: Scenario): SimulatedTrace {
  const press = createScheduledPress(scenario, createRandom(scenario.seed));
  const count = Math.floor(scenario.endS / PHYSICS_STEP_S) + 1;
  const column = () => new Float64Array(count);
  const trace = {
    timesS: column(),
    bondLineC: column(),
    outerEdgeC: column(),
    bondLineProbeC: column(),
    outerEdgeProbeC: column(),
    upperPlatenC: column(),
    lowerPlatenC: column(),
  };
  for (let index = 0; index < count; index += 1) {
    const moment = index === 0 ? press.moment : press.step().moment;
    trace.timesS[index] = moment.timeS;
    trace.bondLineC[index] = moment.bondLineC;
    trace.outerEdgeC[index] = moment.outerEdgeC;
    trace.bondLineProbeC[index] = moment.probesC[0];
    trace.outerEdgeProbeC[index] = moment.probesC[1];
    trace.upperPlatenC[index] = moment.upperPlatenC;
    trace.lowerPlatenC[index] = moment.lowerPlatenC;
  }
  return { ...trace, closings: press.truths() };
}
