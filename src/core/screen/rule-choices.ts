import { dwellLine } from '../text/dwell-text.ts';
import { dwell } from '../trial/dwell.ts';
import type { DwellRule } from '../trial/TrialResult.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

export interface RuleChoice {
  readonly rule: DwellRule;
  readonly line: string;
}

const RULES: readonly DwellRule[] = ['mean', 'slowest', 'next-run'];

/** The dwells that the trial can give now, one line each. */
export function ruleChoices(state: TrialScreenState): readonly RuleChoice[] {
  const { statistics } = state.standing;
  if (statistics === null) return [];
  const { marginS, timerStepS, timerOffsetS, rules } = state.setup;
  const input = { statistics, holdS: rules.holdS, marginS, timerStepS, timerOffsetS };
  return RULES.filter((rule) => dwell({ ...input, rule }).dwell !== null).map((rule) => ({
    rule,
    line: dwellLine(input, rule),
  }));
}
