import { startRecords } from '../screen-records/reduce-records.ts';
import { moved } from '../screen-shell/list-window.ts';
import { reduceGuide } from '../screen-shell/reduce-guide.ts';
import { CHOOSE_TEXT, HOME_TEXT } from '../text/home-text.ts';
import {
  afterGuideStep,
  assemblyGuideStep,
  firstUse,
  initialsGuideStep,
  pressGuideStep,
  readerGuideStep,
} from './guide-steps.ts';
import type { TrialPlan } from './HomeFacts.ts';
import type { HomeState } from './HomeState.ts';
import { homeMenu } from './home-menu.ts';
import { type HomeReduced, said } from './home-reduced.ts';
import { nextStep, openTrial } from './next-step.ts';
import { pressurePage } from './pressure-page.ts';

/** A key on a page that is not one of the records. */
export function reducePage(state: HomeState, name: string): HomeReduced {
  const { page } = state;
  switch (page.kind) {
    case 'home':
      return homeKey(state, name);
    case 'set-up':
      return [setUpKey(state, name), []];
    case 'guide':
      return afterGuideStep(state, page, reduceGuide(page.guide, name));
    case 'choose':
      return chooseKey(state, page, name);
    case 'trial':
      return trialKey(state, name);
    case 'lines':
      if (name === 'up' || name === 'down')
        return [
          {
            ...state,
            page: { ...page, scroll: moved(page.scroll, name === 'up' ? -1 : 1, page.lines.length) },
          },
          [],
        ];
      return [name === 'escape' ? { ...state, page: { kind: 'home' } } : state, []];
    case 'records':
      return [state, []];
  }
}

function homeKey(state: HomeState, name: string): HomeReduced {
  if (name === 'enter') return takeNextStep(state);
  if (name === 'q') return [{ ...state, askingQuit: true }, []];
  const open = openTrial(state.facts);
  if (name === 'x' && open !== null)
    return [said(state, HOME_TEXT.trialClosed, 'good'), [{ kind: 'close-trial', trialId: open.trialId }]];
  if (!homeMenu(state.facts).some((entry) => entry.key === name)) return [state, []];
  switch (name) {
    case 't':
      return [{ ...state, goOnWith: null, page: { kind: 'trial' } }, []];
    case 'r':
      return records(state, null);
    case 'p':
      return [pressurePage(state), []];
    case 's':
      return [{ ...state, page: { kind: 'set-up' } }, []];
    case 'd':
      return [state, [{ kind: 'demo' }]];
    default:
      return [state, [{ kind: 'entry', key: name }]];
  }
}

/** What stands in large letters. */
function takeNextStep(state: HomeState): HomeReduced {
  const step = nextStep(state.facts, state.plan);
  switch (step.kind) {
    case 'go-on': {
      const trial = openTrial(state.facts)!;
      const reader = trial.simulated
        ? 'simulated'
        : state.plan.reader === 'simulated'
          ? null
          : state.plan.reader;
      const plan = { ...state.plan, pressName: trial.pressName, assemblyName: trial.assemblyName, reader };
      return [{ ...state, plan, goOnWith: trial.trialId, page: { kind: 'trial' } }, []];
    }
    case 'set-up':
    case 'press':
    case 'assembly':
      return [firstUse(state), []];
    case 'reader':
    case 'plug-in':
      return [askReader({ ...state, goOnWith: null, page: { kind: 'trial' } }, 'trial'), []];
    case 'result':
      return records(state, step.trialId);
    case 'trial':
      return [{ ...state, goOnWith: null, page: { kind: 'trial' } }, []];
  }
}

function records(state: HomeState, trialId: string | null): HomeReduced {
  const step = startRecords({ trials: state.facts.trials, recipes: state.facts.recipes }, trialId);
  return [
    { ...state, page: { kind: 'records', records: step.state! } },
    [...step.intents, { kind: 'load-all' }],
  ];
}

function setUpKey(state: HomeState, name: string): HomeState {
  switch (name) {
    case 'p':
      return { ...state, page: { kind: 'choose', what: 'press', selected: 0, after: 'set-up' } };
    case 'a':
      return { ...state, page: { kind: 'choose', what: 'assembly', selected: 0, after: 'set-up' } };
    case 'r':
      return askReader(state, 'set-up');
    case 'escape':
      return { ...state, page: { kind: 'home' } };
    default:
      return state;
  }
}

/** Channels are kept per press: without one there is nothing to keep them with. */
function askReader(state: HomeState, after: 'set-up' | 'trial'): HomeState {
  return state.plan.pressName === null
    ? said(state, HOME_TEXT.pressFirst, 'caution')
    : readerGuideStep(state, after);
}

function chooseKey(
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
      return changed({ ...state, page: back(page.after) }, change);
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

function changed(state: HomeState, change: Partial<TrialPlan>): HomeReduced {
  const plan = { ...state.plan, ...change };
  return [{ ...state, plan }, [{ kind: 'save-plan', plan }]];
}

function trialKey(state: HomeState, name: string): HomeReduced {
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
    case '4':
      return [askReader(state, 'trial'), []];
    case '5':
      return changed(state, { ring: following(plan.ring, ['fresh', 're-used']) });
    case '6':
      return changed(state, { coating: following(plan.coating, ['coated', 'bare']) });
    case '7':
      return changed(state, { probe: following(plan.probe, ['re-laid', 'left']) });
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
