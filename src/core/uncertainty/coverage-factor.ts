import { studentTQuantile } from '../statistics/student-t-quantile.ts';

/**
 * Coverage factor k for a two-sided interval: Student t of the effective degrees of freedom, cut to the next
 * lower whole number (at least 1). Example: (0.99, 16.7) → 2.92. Source: JCGM 100 (GUM), G.4.1, G.6.4.
 */
export function coverageFactor(probability: number, degreesOfFreedom: number): number {
  return studentTQuantile((1 + probability) / 2, Math.max(1, Math.floor(degreesOfFreedom)));
}
