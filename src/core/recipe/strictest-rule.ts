import { soakByRule } from '../trial/soak-by-rule.ts';
import type { DwellRule, TrialStatistics } from '../trial/TrialResult.ts';

/**
 * The rule pre-selected when a recipe is accepted: full hold in the next run, or the mean where one run
 * leaves nothing else. The tolerance rule is offered, not pre-selected.
 */
export function strictestRule(statistics: TrialStatistics): DwellRule {
  return statistics.runs < 2 ? 'mean' : 'next-run';
}

/** True when `rule` gives these runs a shorter soak than `other` does. */
export function isLessStrict(rule: DwellRule, other: DwellRule, statistics: TrialStatistics): boolean {
  const soakS = soakByRule(statistics, rule);
  const otherS = soakByRule(statistics, other);
  return soakS !== null && otherS !== null && soakS < otherS;
}
