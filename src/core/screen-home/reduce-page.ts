import { startRecords } from '../screen-records/reduce-records.ts';
import { moved } from '../screen-shell/list-window.ts';
import { reduceGuide } from '../screen-shell/reduce-guide.ts';
import { HOME_TEXT } from '../text/home-text.ts';
import { askReader } from './ask-reader.ts';
import { afterGuideStep, firstUse } from './guide-steps.ts';
import type { HomeState } from './HomeState.ts';
import { homeMenu } from './home-menu.ts';
import { type HomeReduced, said } from './home-reduced.ts';
import { nextStep, openTrial } from './next-step.ts';
import { pressurePage } from './pressure-page.ts';
import { reduceChooseKey } from './reduce-choose-key.ts';
import { reduceTrialStartKey } from './reduce-trial-start-key.ts';

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
      return reduceChooseKey(state, page, name);
    case 'trial':
      return reduceTrialStartKey(state, name);
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
  if (name === 'x' && open !== null) return [{ ...state, askingClose: true }, []];
  const entry = homeMenu(state.facts).find(({ key }) => key === name);
  if (entry === undefined) return [state, []];
  if (entry.needs === 'reader' && state.plan.reader === null) return [askReader(state, 'home'), []];
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

/** The answer whether the open trial is to be closed. */
export function reduceCloseAnswer(state: HomeState, name: string): HomeReduced {
  const asked = { ...state, askingClose: false };
  const open = openTrial(state.facts);
  if (name === 'y' && open !== null)
    return [said(asked, HOME_TEXT.trialClosed, 'good'), [{ kind: 'close-trial', trialId: open.trialId }]];
  return [name === 'n' || name === 'escape' ? asked : state, []];
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
