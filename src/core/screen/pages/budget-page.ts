import { budgetLines, budgetSentence } from '../../text/budget-text.ts';
import { RESULT_PAGE } from '../../text/result-text.ts';
import type { TrialScreenState } from '../TrialScreenState.ts';
import type { DrawPage } from './PageSize.ts';
import { sentenceRows } from './page-rows.ts';

/** The whole uncertainty budget of the mean soak time. */
export function budgetPage(state: TrialScreenState): DrawPage {
  const budget = state.standing.outcome?.budget ?? null;
  return ({ columns, rows }) => {
    if (budget === null) return sentenceRows(RESULT_PAGE.noBudget, columns);
    const lines = budgetLines(budget).map((line) => sentenceRows(line, columns));
    const used = lines.reduce((sum, all) => sum + all.length, 0);
    const air = rows > used + lines.length + 4 ? [[]] : [];
    return [
      ...sentenceRows(`${budgetSentence(budget)}.`, columns, 'strong'),
      [],
      ...sentenceRows(`${RESULT_PAGE.budgetTitle}:`, columns, 'quiet'),
      ...lines.flatMap((all) => [...all, ...air]),
    ];
  };
}
