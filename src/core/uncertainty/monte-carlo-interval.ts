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
  const sums = new Float64Array(draws);
  for (let draw = 0; draw < draws; draw += 1) {
    let sum = 0;
    for (const part of parts) sum += drawPart(part, random);
    sums[draw] = sum;
  }
  const upperS = quantileOf(sums, probability);
  const halfWidthS = quantileOf(sums.map(Math.abs), probability);
  return { halfWidthS, upperS, draws, seed };
}

function quantileOf(values: Float64Array, probability: number): number {
  const place = Math.min(values.length - 1, Math.ceil(probability * values.length) - 1);
  return values.sort()[Math.max(0, place)] ?? Number.NaN;
}
