import type { TrialPlan } from './HomeFacts.ts';
import type { HomeState } from './HomeState.ts';
import type { HomeReduced } from './home-reduced.ts';

/** What the next trial starts with, changed and remembered. */
export function withPlan(state: HomeState, change: Partial<TrialPlan>): HomeReduced {
  const plan = { ...state.plan, ...change };
  return [{ ...state, plan }, [{ kind: 'save-plan', plan }]];
}
