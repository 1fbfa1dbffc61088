import type { RunFit } from '../heating-fit/run-fit.ts';

/**
 * Variance of the soak time that a fitted curve gives, s²: g·C·gᵀ with the covariance C of plateau, time constant and
 * delay and the derivatives g = (τ·(1/(Tp − T0) − 1/(Tp − target)), ln((Tp − T0)/(Tp − target)), 1).
 * Source: JCGM 100 (GUM), 5.2.2, equation 13.
 */
export function soakVariance(
  fit: Pick<RunFit, 'timeConstantS' | 'covariance'>,
  {
    targetC,
    plateauC,
    startC,
  }: { readonly targetC: number; readonly plateauC: number; readonly startC: number },
): number {
  const [overStart, overTarget] = [plateauC - startC, plateauC - targetC];
  const g = [fit.timeConstantS * (1 / overStart - 1 / overTarget), Math.log(overStart / overTarget), 1];
  let variance = 0;
  for (let i = 0; i < 3; i += 1)
    for (let j = 0; j < 3; j += 1) variance += g[i]! * g[j]! * (fit.covariance[i]?.[j] ?? 0);
  return Math.max(0, variance);
}
