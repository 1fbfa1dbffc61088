import { moved } from '../screen-shell/list-window.ts';
import { CHOOSE_TEXT } from '../text/home-text.ts';
import { assemblyGuideStep, pressGuideStep } from './guide-steps.ts';
import type { HomeState } from './HomeState.ts';
import { type HomeReduced, said } from './home-reduced.ts';
import { withPlan } from './with-plan.ts';

/** A key in the list of presses or assemblies: take, change, add. */
export function reduceChooseKey(
  state: HomeState,
  page: Extract<HomeState['page'], { kind: 'choose' }>,
  name: string,
): HomeReduced {
  const all: readonly { readonly name: string }[] =
    page.what === 'press' ? state.facts.presses : state.facts.assemblies;
  const chosen = all[page.selected];
  const guide = page.what === 'press' ? pressGuideStep : assemblyGuideStep;
  switch (name) {
    case 'up':
    case 'down':
      return [
        { ...state, page: { ...page, selected: moved(page.selected, name === 'up' ? -1 : 1, all.length) } },
        [],
      ];
    case 'n':
      return [guide(state, null, page.after), []];
    case 'c':
      return [chosen === undefined ? state : guide(state, chosen.name, page.after), []];
    case 'enter': {
      if (chosen === undefined) return [said(state, CHOOSE_TEXT[page.what].empty, 'caution'), []];
      const change = page.what === 'press' ? { pressName: chosen.name } : { assemblyName: chosen.name };
      return withPlan({ ...state, page: back(page.after) }, change);
    }
    case 'escape':
      return [{ ...state, page: back(page.after) }, []];
    default:
      return [state, []];
  }
}

function back(after: Extract<HomeState['page'], { kind: 'choose' }>['after']): HomeState['page'] {
  return after === 'trial' ? { kind: 'trial' } : { kind: after === 'set-up' ? 'set-up' : 'home' };
}
