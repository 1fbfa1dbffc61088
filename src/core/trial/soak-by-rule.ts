import type { DwellRule, TrialStatistics } from './TrialResult.ts';
import { type ToleranceWish, toleranceUpperS } from './tolerance-upper.ts';

/** Soak part of a dwell by one rule, s, before hold, margin and rounding; null where the rule needs more runs. */
export function soakByRule(
  statistics: TrialStatistics,
  rule: DwellRule,
  tolerance?: ToleranceWish,
): number | null {
  switch (rule) {
    case 'mean':
      return statistics.meanSoakS;
    case 'slowest':
      return statistics.maxSoakS;
    case 'next-run':
      return statistics.nextRunUpper95S;
    case 'tolerance':
      return toleranceUpperS(statistics, tolerance);
  }
}
