import { fitRise, type RiseFit } from './fit-rise.ts';
import type { EstimatePoint, TimeToTarget } from './TimeToTarget.ts';

const FEWEST_POINTS = 12;
const MOST_POINTS = 100;
const SHORTEST_STRETCH_S = 4;
/** Share of the time since press closed, counted back from now, that is fitted (common practice, no source). */
const FITTED_SHARE = 0.45;
const TIME_CONSTANTS_S = Array.from({ length: 241 }, (_, i) => 3 * (1200 / 3) ** (i / 240));
/** 95 % point of chi-square with one degree of freedom: a time constant within it still explains the points. */
const LIKELY = 3.84;
/** Noise is never taken as smaller than this, °C. */
const LEAST_NOISE_C = 0.03;

/** What is known of the temperature at which the bond line levels out: between the platens, so their mean. */
export interface ExpectedPlateau {
  readonly expectedC: number;
  readonly standardUncertaintyC: number;
}

/**
 * Time left to the target from readings so far only: T(t) = Tp − (Tp − T0)·exp(−(t − d)/τ) is fitted to the
 * latest 45 % of the time since press closed, and followed on: rest = τ · ln((Tp − T)/(Tp − target)).
 * Where platens are known, Tp near their mean counts as one more observation. The range holds every time constant
 * that explains the points (95 %) with the fit's own spread, widened by 3 % of the rest and 0.2 s because a part
 * is not exactly first order. Temperatures °C, times s. Refuses (kind 'none') fewer than 12 points or 4 s, a falling
 * trace, and a curve that levels out below the target.
 */
export function timeToTarget(
  points: readonly EstimatePoint[],
  targetC: number,
  options: { readonly fromS: number; readonly plateau?: ExpectedPlateau | null },
): TimeToTarget {
  const latest = points.at(-1);
  if (latest === undefined) return { kind: 'none', why: 'too-early' };
  const startS = options.fromS + (latest.timeS - options.fromS) * (1 - FITTED_SHARE);
  const fitted = thinned(points.filter((p) => p.timeS >= startS && Number.isFinite(p.temperatureC)));
  const stretchS = latest.timeS - (fitted[0]?.timeS ?? latest.timeS);
  if (fitted.length < FEWEST_POINTS || stretchS < SHORTEST_STRETCH_S)
    return { kind: 'none', why: 'too-early' };

  const fits = TIME_CONSTANTS_S.map((tau) => fitRise(fitted, tau)).filter(
    (fit): fit is RiseFit => fit !== null && fit.dropC > 0,
  );
  const [first] = fits;
  if (first === undefined) return { kind: 'none', why: 'not-rising' };
  const leastSquares = fits.reduce((least, fit) => Math.min(least, fit.squares), first.squares);
  const variance = Math.max(LEAST_NOISE_C ** 2, leastSquares / (fitted.length - 3));
  const misfit = (fit: RiseFit) => fit.squares / variance + unlikeliness(fit, options.plateau ?? null);
  const best = fits.reduce((least, fit) => (misfit(fit) < misfit(least) ? fit : least), first);
  // The fit counts from the mean of its latest group, which lies a little before the latest point.
  const lagS = latest.timeS - (fitted.at(-1)?.timeS ?? latest.timeS);
  const rest = restOf(best, targetC);
  const restS = rest === null ? null : Math.max(0, rest - lagS);
  if (restS === null) return { kind: 'none', why: 'levels-out-below' };

  const likely = fits.filter((fit) => misfit(fit) <= misfit(best) + LIKELY);
  const ends = likely.map((fit) => {
    const end = restOf(fit, targetC);
    return end === null
      ? null
      : { rest: end - lagS, spreadS: 2 * Math.sqrt(variance) * restSpread(fit, targetC) };
  });
  const known = ends.filter((end) => end !== null);
  const wideningS = 0.03 * restS + 0.2;
  return {
    kind: 'estimate',
    restS,
    earliestS: Math.max(0, Math.min(...known.map((end) => end.rest - end.spreadS)) - wideningS),
    latestS:
      known.length < ends.length ? null : Math.max(...known.map((end) => end.rest + end.spreadS)) + wideningS,
    plateauC: best.plateauC,
    timeConstantS: best.timeConstantS,
  };
}

/** At most 100 points, each the mean of its neighbours, so that a slow rise costs no more than a fast one. */
function thinned(points: readonly EstimatePoint[]): readonly EstimatePoint[] {
  const size = Math.ceil(points.length / MOST_POINTS);
  if (size <= 1) return points;
  const means: EstimatePoint[] = [];
  // Counted from the end, so that the latest group is whole.
  for (let end = points.length; end >= size; end -= size) {
    const group = points.slice(end - size, end);
    const mean = (of: (point: EstimatePoint) => number) => group.reduce((sum, p) => sum + of(p), 0) / size;
    means.push({ timeS: mean((p) => p.timeS), temperatureC: mean((p) => p.temperatureC) });
  }
  return means.reverse();
}

function unlikeliness(fit: RiseFit, plateau: ExpectedPlateau | null): number {
  return plateau === null ? 0 : ((fit.plateauC - plateau.expectedC) / plateau.standardUncertaintyC) ** 2;
}

function restOf(fit: RiseFit, targetC: number): number | null {
  const left = fit.plateauC - targetC;
  if (left <= 0) return null;
  return Math.max(0, fit.timeConstantS * Math.log(fit.dropC / left));
}

/** Standard deviation of the rest per unit standard deviation of the points, the time constant given. */
function restSpread({ timeConstantS, plateauC, dropC, spread }: RiseFit, targetC: number): number {
  const byDrop = timeConstantS / dropC;
  const byPlateau = -timeConstantS / (plateauC - targetC);
  const squared =
    byDrop ** 2 * spread.drop + byPlateau ** 2 * spread.plateau + 2 * byDrop * byPlateau * spread.both;
  return Math.sqrt(Math.max(0, squared));
}
