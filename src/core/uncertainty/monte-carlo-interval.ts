import { createRandom, type RandomSource } from '../simulator/create-random.ts';
import { requireProbability } from '../statistics/require-probability.ts';
import { drawPart } from './draw-part.ts';
import type { UncertaintyPart } from './UncertaintyPart.ts';

export interface MonteCarloInterval {
  /** Half-width of the interval that holds `probability` of the sum, symmetric about 0, s. */
  readonly halfWidthS: number;
  /** The sum stays at or below this with `probability`, s. */
  readonly upperS: number;
  readonly draws: number;
  readonly seed: number;
}

/**
 * Interval of a sum of parts by propagating their distributions: each part drawn many times, summed, sorted.
 * The widest rectangular part is drawn in even strips (stratified), all others freely.
 * Parts are symmetric about 0; the one-sided figure asks for a probability of 0.5 or more.
 * Right where one rectangular part dominates and k = 2 would overstate. Same seed, same figure.
 * Source: JCGM 101:2008, clause 7 (additive model, 9.2).
 */
export function monteCarloInterval(
  parts: readonly UncertaintyPart[],
  {
    probability = 0.95,
    draws = 100_000,
    seed = 1,
  }: { probability?: number; draws?: number; seed?: number } = {},
): MonteCarloInterval {
  requireProbability(probability, 'Monte Carlo interval');
  const random = createRandom(seed);
  const distances = new Float64Array(draws);
  const even = widestRectangular(parts);
  if (even !== null) spreadEvenly(even, random, distances);
  for (const part of parts) {
    if (part === even) continue;
    for (let draw = 0; draw < draws; draw += 1) distances[draw]! += drawPart(part, random);
  }
  for (let draw = 0; draw < draws; draw += 1) distances[draw] = Math.abs(distances[draw]!);
  distances.sort();
  // Every part is symmetric, so the sum stays below x as often as its distance stays below x, half the rest added.
  const upperS = quantileOf(distances, Math.max(0, 2 * probability - 1));
  return { halfWidthS: quantileOf(distances, probability), upperS, draws, seed };
}

function widestRectangular(parts: readonly UncertaintyPart[]): UncertaintyPart | null {
  let widest: UncertaintyPart | null = null;
  for (const part of parts)
    if (part.shape === 'rectangular' && part.standardUncertaintyS > (widest?.standardUncertaintyS ?? 0))
      widest = part;
  return widest;
}

/** One draw from each of as many equal strips of ±a: the same distribution, less chance in its quantiles. */
function spreadEvenly(part: UncertaintyPart, random: RandomSource, sums: Float64Array): void {
  const limitS = part.standardUncertaintyS * Math.sqrt(3);
  const stripS = (2 * limitS) / sums.length;
  for (let draw = 0; draw < sums.length; draw += 1) sums[draw] = (draw + random.uniform()) * stripS - limitS;
}

function quantileOf(sorted: Float64Array, probability: number): number {
  const place = Math.ceil(probability * sorted.length) - 1;
  return sorted[Math.max(0, place)] ?? Number.NaN;
}
