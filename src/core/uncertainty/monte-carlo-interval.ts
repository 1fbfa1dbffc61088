import { createRandom } from '../simulator/create-random.ts';
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
  for (let draw = 0; draw < draws; draw += 1) {
    let sum = 0;
    for (const part of parts) sum += drawPart(part, random);
    distances[draw] = Math.abs(sum);
  }
  distances.sort();
  // Every part is symmetric, so the sum stays below x as often as its distance stays below x, half the rest added.
  const upperS = quantileOf(distances, Math.max(0, 2 * probability - 1));
  return { halfWidthS: quantileOf(distances, probability), upperS, draws, seed };
}

function quantileOf(sorted: Float64Array, probability: number): number {
  const place = Math.ceil(probability * sorted.length) - 1;
  return sorted[Math.max(0, place)] ?? Number.NaN;
}
