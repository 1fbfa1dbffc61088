import { fittedSoakS, soakSensitivities } from '../heating-fit/fitted-soak-s.ts';
import type { RunResult } from '../run/RunResult.ts';
import { platenMeanC } from './platen-mean-c.ts';
import type { ReferenceConditions, ReferenceSoak } from './ReferenceSoak.ts';

/** A shift beyond this makes a run suspect: 3 s or a twentieth of its soak time. Common practice, no source. */
export const REFERENCE_LIMIT = { leastS: 3, share: 0.05 } as const;

/**
 * A run's soak time at reference start and platen temperatures, by its own fitted curve:
 * shift = fitted(reference) − fitted(own), about −0.2 s per °C of start and −0.5 s per °C of platens on the
 * trade's example. The plateau moves with the mean of the platens. Null without soak time or fit, or where
 * the curve at reference never reaches the target.
 */
export function referenceSoak(
  result: RunResult,
  targetC: number,
  reference: ReferenceConditions,
): ReferenceSoak | null {
  const { soakTimeS, fit } = result;
  if (soakTimeS === null || fit == null) return null;
  const own = fittedSoakS(fit, { targetC });
  if (own === null) return null;
  const ownPlatenC = platenMeanC(result);
  const startDifferenceC = reference.startC === null ? 0 : reference.startC - fit.startC;
  const platenDifferenceC =
    reference.platenC === null || ownPlatenC === null ? 0 : reference.platenC - ownPlatenC;
  const startC = fit.startC + startDifferenceC;
  const byStart = fittedSoakS(fit, { targetC, startC });
  const both = fittedSoakS(fit, { targetC, startC, plateauC: fit.plateauC + platenDifferenceC });
  if (byStart === null || both === null) return null;
  const shiftS = both - own;
  const limitS = Math.max(REFERENCE_LIMIT.leastS, REFERENCE_LIMIT.share * soakTimeS);
  return {
    soakAtReferenceS: soakTimeS + shiftS,
    shiftS,
    byStartS: byStart - own,
    byPlatenS: both - byStart,
    startDifferenceC,
    platenDifferenceC,
    ...soakSensitivities(fit, targetC),
    limitS,
    beyondLimit: Math.abs(shiftS) > limitS,
  };
}
