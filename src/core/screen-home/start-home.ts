import { EMPTY_INPUT } from '../screen/ScreenInput.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { HomeFacts, TrialPlan } from './HomeFacts.ts';
import type { HomePage, HomeState } from './HomeState.ts';

/** The home before any key. `nowUs`: host monotonic clock. */
export function startHome(
  facts: HomeFacts,
  plan: TrialPlan,
  unit: TemperatureUnit,
  nowUs: number,
  page: HomePage = { kind: 'home' },
): HomeState {
  return Object.freeze({
    facts,
    plan: planThatExists(plan, facts),
    goOnWith: null,
    unit,
    nowUs,
    page,
    help: null,
    askingQuit: false,
    input: EMPTY_INPUT,
    notice: null,
  });
}

/** A remembered press or assembly that the store no longer has is forgotten; the only one there is, is taken. */
export function planThatExists(plan: TrialPlan, facts: HomeFacts): TrialPlan {
  const pick = (name: string | null, all: readonly { readonly name: string }[]) =>
    all.some((one) => one.name === name) ? name : all.length === 1 ? (all[0]?.name ?? null) : null;
  return {
    ...plan,
    pressName: pick(plan.pressName, facts.presses),
    assemblyName: pick(plan.assemblyName, facts.assemblies),
  };
}
