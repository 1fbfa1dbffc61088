import { grubbs } from '../statistics/grubbs.ts';
import { type OddRunCause, oddRunCauses } from './odd-run-causes.ts';
import type { TrialRun } from './TrialResult.ts';

/** Under this many runs a test for outliers says nothing of use. */
export const LEAST_RUNS_FOR_ODD_RUN = 5;

export interface OddRun {
  readonly run: TrialRun;
  readonly g: number;
  readonly critical: number;
  /** By how much it differs from the mean of the others, s. */
  readonly differenceS: number;
  /** What else was different about it; empty when nothing physical was found. */
  readonly causes: readonly OddRunCause[];
}

/**
 * The one run of a trial whose soak time lies farther out than chance allows (Grubbs, either side, 5 %), with
 * what else was different about it. A flag for people: it never makes a run suspect and never takes one out.
 * Null under five counting runs, or when none is odd.
 */
export function oddRun(counting: readonly TrialRun[]): OddRun | null {
  const soakTimesS = counting.flatMap(({ result }) => result.soakTimeS ?? []);
  if (soakTimesS.length < LEAST_RUNS_FOR_ODD_RUN || soakTimesS.length !== counting.length) return null;
  const { index, g, critical, flagged } = grubbs(soakTimesS);
  const run = counting[index];
  const soakS = soakTimesS[index];
  if (!flagged || run === undefined || soakS === undefined) return null;
  const others = counting.filter((one) => one !== run);
  const othersMeanS = (soakTimesS.reduce((sum, value) => sum + value, 0) - soakS) / others.length;
  return { run, g, critical, differenceS: soakS - othersMeanS, causes: oddRunCauses(run, others) };
}
