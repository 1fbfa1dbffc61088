import type { ResidualTest } from './HeatingFit.ts';
import { lag1Autocorrelation } from './lag-1-autocorrelation.ts';
import { runsZ } from './runs-z.ts';

const FEWEST = 20;
/** One-sided 0.5 % of the normal distribution. */
const TOO_FEW_RUNS_Z = -2.576;
/** A smaller misfit changes no soak time that matters, °C. Common practice, no source. */
const LEAST_MISFIT_C = 0.3;
/** … or this share of the rise. */
const LEAST_MISFIT_SHARE = 0.002;
const STRETCHES = 40;

/**
 * Whether what a fit leaves over is noise. Two things must meet before the model is called wrong: residuals of equal
 * sign in too few stretches (runs test, 0.5 %), which alone would find fault with any curve given enough readings; and
 * a misfit above 0.3 °C and 0.2 % of the rise (`riseC`) once noise is averaged away over a fortieth of the curve.
 */
export function residualTest(residualsC: Float64Array, riseC: number): ResidualTest {
  const n = residualsC.length;
  let differences = 0;
  for (let i = 1; i < n; i += 1) differences += (residualsC[i]! - residualsC[i - 1]!) ** 2;
  const noiseC = n < 2 ? 0 : Math.sqrt(differences / (2 * (n - 1)));
  const figures = { runsZ: runsZ(residualsC), lag1Autocorrelation: lag1Autocorrelation(residualsC), noiseC };
  const misfitC = misfit(residualsC, noiseC);
  if (n < FEWEST) return { ...figures, misfitC, verdict: 'too-few-readings' };
  const matters = misfitC > Math.max(LEAST_MISFIT_C, LEAST_MISFIT_SHARE * Math.abs(riseC));
  return {
    ...figures,
    misfitC,
    verdict: matters && figures.runsZ < TOO_FEW_RUNS_Z ? 'wrong-model' : 'fits',
  };
}

function misfit(residualsC: Float64Array, noiseC: number): number {
  const n = residualsC.length;
  const size = Math.max(1, Math.floor(n / STRETCHES));
  let [squares, stretches] = [0, 0];
  for (let from = 0; from + size <= n; from += size) {
    let sum = 0;
    for (let i = from; i < from + size; i += 1) sum += residualsC[i]!;
    squares += (sum / size) ** 2;
    stretches += 1;
  }
  if (stretches === 0) return 0;
  return Math.sqrt(Math.max(0, squares / stretches - noiseC ** 2 / size));
}
