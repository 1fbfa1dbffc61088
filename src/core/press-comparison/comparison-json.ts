import { warmUpJson } from '../warm-up/warm-up-json.ts';
import type { TrialComparison } from './compare-trials.ts';
import type { WarmUpComparison } from './WarmUpComparison.ts';

/** Two presses by their warm-ups, for scripts: units in the figures' keys, difference = second less first. */
export function warmUpComparisonJson(comparison: WarmUpComparison): Readonly<Record<string, unknown>> {
  const { first, second, figures, repeated, rulesDiffer } = comparison;
  return {
    compares: 'warm-ups',
    first: { name: first.name, warmUps: first.warmUps.map(warmUpJson) },
    second: { name: second.name, warmUps: second.warmUps.map(warmUpJson) },
    repeated,
    rulesDiffer,
    confidence: 0.95,
    figures: figures.map(({ key, role, kind, ...figure }) => ({ role, figure: key, ...figure })),
  };
}

/** Two presses by trials of one assembly, for scripts: seconds, difference = second less first. */
export function trialComparisonJson(
  comparison: TrialComparison,
  names: { readonly first: string; readonly second: string },
): Readonly<Record<string, unknown>> {
  const { first, second, difference, equivalence, cover } = comparison;
  return {
    compares: 'trials',
    first: { name: names.first, soakTimesS: comparison.firstSoakTimesS, ...first },
    second: { name: names.second, soakTimesS: comparison.secondSoakTimesS, ...second },
    differenceS: difference?.difference ?? null,
    differenceLow95S: difference?.low ?? null,
    differenceHigh95S: difference?.high ?? null,
    equivalence,
    recipeCover: cover,
  };
}
