import type { StyledRow } from '../../chart/StyledRow.ts';
import { strictestRule } from '../../recipe/strictest-rule.ts';
import { LISTED_RULES } from '../../result/trial-outcome.ts';
import { budgetSentence, commonPartSentence } from '../../text/budget-text.ts';
import { DWELL_RULE_NAME, NO_DWELL } from '../../text/dwell-text.ts';
import {
  dwellParts,
  figuresLine,
  oneMoreLine,
  RESULT_PAGE,
  ruleLine,
  timerLine,
} from '../../text/result-text.ts';
import { oddRunText } from '../../text/trial-text.ts';
import { numberText } from '../../text/units-text.ts';
import type { TrialScreenState } from '../TrialScreenState.ts';
import type { DrawPage } from './PageSize.ts';
import { blockRows, sentenceRows, sideBySide } from './page-rows.ts';

/** The suggested dwell in block digits with its parts, the other rules, and how sure the soak time is. */
export function resultPage(state: TrialScreenState): DrawPage {
  const { outcome = null } = state.standing;
  return ({ columns, rows, ascii }) => {
    if (outcome === null) return sentenceRows(RESULT_PAGE.none, columns);
    const rule = strictestRule(outcome.statistics);
    const { dwell, reason } = outcome.dwells[rule];
    if (dwell === null) return sentenceRows(NO_DWELL[reason], columns);
    const say = (text: string | null, role: 'plain' | 'strong' | 'caution' | 'quiet' = 'plain') =>
      text === null ? [] : sentenceRows(text, columns, role);
    const big = blockRows(
      `${numberText(dwell.totalS, dwell.totalS % 1 === 0 ? 0 : 1)} S`,
      'large',
      ascii,
      'strong',
    );
    const beside = [
      ...blockRows('DWELL', 'small', ascii, 'strong'),
      [{ text: ` ${DWELL_RULE_NAME[rule]},`, role: 'strong' as const }],
      [{ text: ` ${RESULT_PAGE.from}`, role: 'plain' as const }],
    ];
    const others = LISTED_RULES.filter((one) => one !== rule);
    const page = (air: readonly StyledRow[]) => [
      ...air,
      ...sideBySide(big, beside, 46),
      ...air,
      ...say(dwellParts(dwell), 'strong'),
      ...say(timerLine(outcome, dwell), 'strong'),
      ...(dwell.provisional ? say(RESULT_PAGE.provisional, 'caution') : []),
      ...air,
      ...say(RESULT_PAGE.others, 'quiet'),
      ...others.map((one) => [{ text: ` ${ruleLine(outcome, one)}`, role: 'plain' as const }]),
      ...air,
      ...(outcome.budget === null
        ? []
        : [...say(`${budgetSentence(outcome.budget)}.`), ...say(`${commonPartSentence(outcome.budget)}.`)]),
      ...say(figuresLine(outcome.statistics), 'quiet'),
      ...say(oneMoreLine(outcome.statistics), 'quiet'),
      ...(outcome.oddRun === null ? [] : say(oddRunText(outcome.oddRun, state.unit), 'caution')),
    ];
    const airy = page([[]]);
    return airy.length <= rows ? airy : page([]);
  };
}
