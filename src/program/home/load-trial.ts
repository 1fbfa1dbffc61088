import { strictestRule } from '../../core/recipe/strictest-rule.ts';
import type { LoadedTrial } from '../../core/screen-records/RecordsState.ts';
import type { Store } from '../../core/store/Store.ts';
import { dwellSentences } from '../../core/text/dwell-text.ts';
import { trialLines } from '../../core/text/trial-text.ts';
import { storedOutcome } from '../trials/stored-outcome.ts';

/** A trial of the store as the records show it: runs, decisions, mean, spread, both dwell rules. */
export function loadTrial(store: Store, trialId: string): LoadedTrial {
  const { outcome } = storedOutcome(store, trialId, {});
  const { statistics, settings } = outcome;
  return {
    trialId,
    outcome,
    figures: [...trialLines(statistics).slice(0, 2), ...dwellSentences({ statistics, ...settings })],
    strictestRule: strictestRule(statistics),
  };
}
