import { fitRise, type RiseFit } from './fit-rise.ts';
import type { EstimatePoint, TimeToTarget } from './TimeToTarget.ts';

const FEWEST_POINTS = 12;
const SHORTEST_STRETCH_S = 4;
/** Share of the time since press closed, counted back from now, that is fitted (common practice, no source). */
const FITTED_SHARE = 0.6;
const TIME_CONSTANTS_S = Array.from({ length: 81 }, (_, i) => 3 * (1200 / 3) ** (i / 80));
/** 95 % point of F(1, many): a time constant whose squares lie within it still explains the points. */
const LIKELY_F = 3.84;

/**
 * Time left to the target from readings so far only: T(t) = Tp − (Tp − T0)·exp(−(t − d)/τ) is fitted to the
 * latest 60 % of the time since press closed, and followed on: rest = τ · ln((Tp − T)/(Tp − target)).
 * The range holds every time constant that explains the points (profile of the squares, 95 %), widened by 3 %
 * of the rest and 0.2 s because a part is not exactly first order. `plateauLimitC` (the hotter platen) rules
 * out curves that would end above it. Temperatures °C, times s. Refuses (kind 'none') fewer than 12 points or
 * 4 s, a falling trace, and a curve that levels out below the target.
 */
export function timeToTarget(
  points: readonly EstimatePoint[],
  targetC: number,
  options: { readonly fromS: number; readonly plateauLimitC?: number | null },
): TimeToTarget {
  const latest = points.at(-1);
  if (latest === undefined) return { kind: 'none', why: 'too-early' };
  const startS = options.fromS + (latest.timeS - options.fromS) * (1 - FITTED_SHARE);
  const fitted = points.filter((p) => p.timeS >= startS && Number.isFinite(p.temperatureC));
  const stretchS = latest.timeS - (fitted[0]?.timeS ?? latest.timeS);
  if (fitted.length < FEWEST_POINTS || stretchS < SHORTEST_STRETCH_S)
    return { kind: 'none', why: 'too-early' };

  const limitC = options.plateauLimitC ?? Number.POSITIVE_INFINITY;
  const rising = TIME_CONSTANTS_S.map((tau) => fitRise(fitted, tau)).filter(
    (fit): fit is RiseFit => fit !== null && fit.dropC > 0,
  );
  if (rising.length === 0) return { kind: 'none', why: 'not-rising' };
  const possible = rising.filter((fit) => fit.plateauC <= limitC);
  const fits = possible.length > 0 ? possible : rising.slice(0, 1);
  const best = refine(fitted, fits, limitC);
  const bestRestS = restOf(best, targetC);
  if (bestRestS === null) return { kind: 'none', why: 'levels-out-below' };

  const allowed = best.squares * (1 + LIKELY_F / Math.max(1, fitted.length - 3)) + 1e-9;
  const rests = fits.filter((fit) => fit.squares <= allowed).map((fit) => restOf(fit, targetC));
  const known = rests.filter((rest): rest is number => rest !== null);
  const wideningS = 0.03 * bestRestS + 0.2;
  return {
    kind: 'estimate',
    restS: bestRestS,
    earliestS: Math.max(0, Math.min(bestRestS, ...known) - wideningS),
    latestS: rests.includes(null) ? null : Math.max(bestRestS, ...known) + wideningS,
    plateauC: best.plateauC,
    timeConstantS: best.timeConstantS,
  };
}

/** Golden-section search between the neighbours of the best time constant of the list. */
function refine(points: readonly EstimatePoint[], fits: readonly RiseFit[], limitC: number): RiseFit {
  let at = 0;
  fits.forEach((fit, i) => {
    if (fit.squares < (fits[at]?.squares ?? Number.POSITIVE_INFINITY)) at = i;
  });
  let best = fits[at] as RiseFit;
  let low = Math.log((fits[at - 1] ?? best).timeConstantS);
  let high = Math.log((fits[at + 1] ?? best).timeConstantS);
  for (let round = 0; round < 20 && high - low > 1e-5; round++) {
    const a = high - (high - low) * 0.618;
    const b = low + (high - low) * 0.618;
    const fitA = fitRise(points, Math.exp(a));
    const fitB = fitRise(points, Math.exp(b));
    if (fitA === null || fitB === null) break;
    const better = fitA.squares < fitB.squares ? fitA : fitB;
    if (better === fitA) high = b;
    else low = a;
    if (better.squares < best.squares && better.plateauC <= limitC) best = better;
  }
  return best;
}

function restOf(fit: RiseFit, targetC: number): number | null {
  const left = fit.plateauC - targetC;
  if (left <= 0) return null;
  return Math.max(0, fit.timeConstantS * Math.log(fit.dropC / left));
}
