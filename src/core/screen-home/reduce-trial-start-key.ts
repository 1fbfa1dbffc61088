import { HOME_TEXT } from '../text/home-text.ts';
import { askReader } from './ask-reader.ts';
import { assemblyGuideStep, channelsGuideStep, initialsGuideStep, pressGuideStep } from './guide-steps.ts';
import type { HomeState } from './HomeState.ts';
import { type HomeReduced, said } from './home-reduced.ts';
import { withPlan } from './with-plan.ts';

/** A key on the page that a trial is started from: a line's figure, or Enter. */
export function reduceTrialStartKey(state: HomeState, name: string): HomeReduced {
  const { plan, goOnWith } = state;
  const fixed = goOnWith !== null;
  switch (name) {
    case 'escape':
      return [{ ...state, goOnWith: null, page: { kind: 'home' } }, []];
    case 'enter':
      if (plan.pressName === null || plan.assemblyName === null || plan.reader === null)
        return [said(state, HOME_TEXT.nothingToStart, 'caution'), []];
      return [state, [{ kind: 'start-trial', plan, goOnWith }]];
    case '1':
      return [fixed ? state : choose(state, 'press'), []];
    case '2':
      return [fixed ? state : choose(state, 'assembly'), []];
    case '3':
      return [askReader(state, 'trial'), []];
    case '4':
      return [plan.pressName === null ? askReader(state, 'trial') : channelsGuideStep(state), []];
    case '5':
      return withPlan(state, { ring: following(plan.ring, ['fresh', 're-used']) });
    case '6':
      return withPlan(state, { coating: following(plan.coating, ['coated', 'bare']) });
    case '7':
      return withPlan(state, { probe: following(plan.probe, ['re-laid', 'left']) });
    case '8':
      return [initialsGuideStep(state), []];
    default:
      return [state, []];
  }
}

function choose(state: HomeState, what: 'press' | 'assembly'): HomeState {
  const all: readonly { readonly name: string }[] =
    what === 'press' ? state.facts.presses : state.facts.assemblies;
  if (all.length === 0) return (what === 'press' ? pressGuideStep : assemblyGuideStep)(state, null, 'trial');
  const name = what === 'press' ? state.plan.pressName : state.plan.assemblyName;
  const selected = Math.max(
    0,
    all.findIndex((one) => one.name === name),
  );
  return { ...state, page: { kind: 'choose', what, selected, after: 'trial' } };
}

/** The next of the words, then "not stated", then the first again. */
function following<Word extends string>(word: Word | null, words: readonly Word[]): Word | null {
  return word === null ? (words[0] ?? null) : (words[words.indexOf(word) + 1] ?? null);
}
