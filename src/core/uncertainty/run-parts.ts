import { StatisticsError } from '../statistics/StatisticsError.ts';
import { sampleMean } from '../statistics/sample-mean.ts';
import { sampleSd } from '../statistics/sample-sd.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import type { UncertaintyPart } from './UncertaintyPart.ts';

export interface RunParts {
  readonly meanSoakS: number;
  /** Mean heating rate at the crossing. */
  readonly slopeCPerS: number;
  /** Spread of the runs over √n; with one run what that run's crossing and closing leave open. */
  readonly own: UncertaintyPart;
  readonly ofWhich: readonly UncertaintyPart[];
}

/** The part of a budget that the runs themselves bring, s. Refuses a run without soak time, slope or uncertainty. */
export function runParts(counting: readonly TrialRun[]): RunParts {
  const runs = counting.map(({ result }) => {
    const { soakTimeS, soakTimeStandardUncertaintyS, crossing } = result;
    if (soakTimeS === null || soakTimeStandardUncertaintyS === null || crossing === null) {
      throw new StatisticsError(
        'value-not-finite',
        'a budget requires runs with a soak time',
        'Take the runs that count only',
      );
    }
    return { soakTimeS, uncertaintyS: soakTimeStandardUncertaintyS, slopeCPerS: crossing.slopeCPerS };
  });
  const n = runs.length;
  const meanSoakS = sampleMean(runs.map((run) => run.soakTimeS));
  const slopeCPerS = sampleMean(runs.map((run) => run.slopeCPerS));
  const meanSquareS2 = sampleMean(runs.map((run) => run.uncertaintyS ** 2));
  const within: UncertaintyPart = {
    code: n < 2 ? 'single-run' : 'crossing-and-mark',
    shape: 'normal',
    standardUncertaintyS: Math.sqrt(meanSquareS2 / n),
    degreesOfFreedom: Number.POSITIVE_INFINITY,
  };
  if (n < 2) return { meanSoakS, slopeCPerS, own: within, ofWhich: [] };
  const own: UncertaintyPart = {
    code: 'run-to-run',
    shape: 'student',
    standardUncertaintyS: sampleSd(runs.map((run) => run.soakTimeS)) / Math.sqrt(n),
    degreesOfFreedom: n - 1,
  };
  return { meanSoakS, slopeCPerS, own, ofWhich: [within] };
}
