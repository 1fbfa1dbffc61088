import type { HeatingFit, ResidualTest } from './HeatingFit.ts';

/** Heating curve of one run, on the clock of the run: press closed is 0 s. Kept with the run's result. */
export interface RunFit {
  readonly plateauC: number;
  readonly timeConstantS: number;
  /** Press closed to the departure of the curve, s. */
  readonly delayS: number;
  readonly startC: number;
  /** Of plateau, time constant and delay, in this order. */
  readonly covariance: readonly (readonly [number, number, number])[];
  readonly residualSdC: number;
  readonly runsZ: number;
  readonly lag1Autocorrelation: number;
  readonly misfitC: number;
  readonly verdict: ResidualTest['verdict'];
}

/** A fit on the run's own clock. */
export function runFit(fit: HeatingFit, pressClosedS: number): RunFit {
  return {
    plateauC: fit.plateauC,
    timeConstantS: fit.timeConstantS,
    delayS: fit.departsS - pressClosedS,
    startC: fit.startC,
    covariance: fit.covariance,
    residualSdC: fit.residualSdC,
    runsZ: fit.residuals.runsZ,
    lag1Autocorrelation: fit.residuals.lag1Autocorrelation,
    misfitC: fit.residuals.misfitC,
    verdict: fit.residuals.verdict,
  };
}
