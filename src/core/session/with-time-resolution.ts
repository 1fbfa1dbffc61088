import type { RunResult } from '../run/RunResult.ts';

/**
 * Widens a run's uncertainty by the step in which a logger wrote its times: each of closing and crossing carries the
 * standard uncertainty step/√12 of a rectangular distribution (JCGM 100:2008, 4.3.7), a soak time both.
 */
export function withTimeResolution(result: RunResult, timeStepS: number): RunResult {
  if (!(timeStepS > 0)) return result;
  const oneS = timeStepS / Math.sqrt(12);
  const { pressClosed, crossing, soakTimeStandardUncertaintyS } = result;
  return {
    ...result,
    pressClosed:
      pressClosed === null
        ? null
        : { ...pressClosed, standardUncertaintyS: Math.hypot(pressClosed.standardUncertaintyS, oneS) },
    crossing:
      crossing === null
        ? null
        : { ...crossing, standardUncertaintyS: Math.hypot(crossing.standardUncertaintyS, oneS) },
    soakTimeStandardUncertaintyS:
      soakTimeStandardUncertaintyS === null ? null : Math.hypot(soakTimeStandardUncertaintyS, oneS, oneS),
  };
}
