import type { SoakTimesInput } from '../figure/soak-times-chart.ts';
import type { TrialOutcome } from '../result/trial-outcome.ts';

/** The trial's soak times as their chart draws them. */
export function soakTimesOf(outcome: TrialOutcome, simulated: boolean): SoakTimesInput {
  return {
    runs: outcome.runs.map(({ result }, index) => ({
      label: String(index + 1),
      counts: outcome.leftOut[index] === null,
      soakTimeS: result.soakTimeS,
      standardUncertaintyS: result.soakTimeStandardUncertaintyS,
    })),
    statistics: outcome.statistics,
    simulated,
  };
}
