import { bondingReducer } from '../../../../src/core/bonding/bonding-reducer.ts';
import { trialFrame } from '../../../../src/core/screen/trial-frame.ts';
import { trialScreenReducer } from '../../../../src/core/screen/trial-screen-reducer.ts';
import { trialView } from '../../../../src/core/screen/trial-view.ts';
import { bondingView } from '../../../../src/core/screen-bonding/bonding-view.ts';
import { homeReducer } from '../../../../src/core/screen-home/home-reducer.ts';
import { homeView } from '../../../../src/core/screen-home/home-view.ts';
import { shellFrame } from '../../../../src/core/screen-shell/shell-frame.ts';
import { warmUpReducer } from '../../../../src/core/screen-warm-up/warm-up-reducer.ts';
import { warmUpView } from '../../../../src/core/screen-warm-up/warm-up-view.ts';
import { SCRIPTS, type ScriptedTrial, scripted } from '../../../core/screen/scripted-trial.ts';
import { type DrivenHome, PAGES } from '../../../core/screen-home/shop.ts';
import { WARM_UP_STATES } from '../../../core/screen-warm-up/watched-platens.ts';
import { BONDING_STATES } from './bonding-states.ts';
import { FIRST_USE_STATES } from './first-use-states.ts';
import { pressIn } from './pressed.ts';
import type { Screen } from './Screen.ts';
import { MORE_TRIAL_STATES } from './trial-states.ts';

function trialScreen(trial: ScriptedTrial): Screen {
  const { state } = trial;
  const view = trialView(state, { columns: 80, rows: 24, ascii: false });
  return {
    rows: (columns, rows, ascii) => trialFrame(trialView(state, { columns, rows, ascii })),
    keys: view.keys,
    press: (name) => pressIn(state, trialScreenReducer, name, state.nowUs),
    simulated: state.setup.simulated,
    words: view.dialog?.place === 'cover' ? [] : view.state.words,
  };
}

function homeScreen(home: DrivenHome): Screen {
  const { state } = home;
  return {
    rows: (columns, rows, ascii) => shellFrame(homeView(state), { columns, rows, ascii }),
    keys: homeView(state).keys,
    press: (name) => pressIn(state, homeReducer, name, state.nowUs),
    // The pages around a trial of the store; only the record of a simulated trial is one.
    simulated: false,
    words: [],
  };
}

/** Every screen of the program in every state that it has, by name. Made when asked for. */
export const ALL_SCREENS: Readonly<Record<string, () => Screen>> = {
  ...Object.fromEntries(
    Object.keys(SCRIPTS).map((name) => [`trial: ${name}`, () => trialScreen(scripted(name))]),
  ),
  ...Object.fromEntries(
    Object.entries(MORE_TRIAL_STATES).map(([name, make]) => [`trial: ${name}`, () => trialScreen(make())]),
  ),
  ...Object.fromEntries(
    Object.entries(FIRST_USE_STATES).map(([name, make]) => [`first use: ${name}`, () => homeScreen(make())]),
  ),
  ...Object.fromEntries(
    Object.entries(PAGES).map(([name, make]) => [`home: ${name}`, () => homeScreen(make())]),
  ),
  ...Object.fromEntries(
    Object.entries(BONDING_STATES).map(([name, make]) => [
      `bonding: ${name}`,
      (): Screen => {
        const state = make();
        return {
          rows: (columns, rows, ascii) => shellFrame(bondingView(state), { columns, rows, ascii }),
          keys: bondingView(state).keys,
          press: (key) => pressIn(state, bondingReducer, key, state.nowUs),
          simulated: state.job?.simulated === true,
          words: [],
        };
      },
    ]),
  ),
  ...Object.fromEntries(
    Object.entries(WARM_UP_STATES).map(([name, make]) => [
      `warm-up: ${name}`,
      (): Screen => {
        const state = make();
        return {
          rows: (columns, rows, ascii) => shellFrame(warmUpView(state), { columns, rows, ascii }),
          keys: warmUpView(state).keys,
          press: (key) => pressIn(state, warmUpReducer, key, state.nowUs),
          simulated: state.simulated,
          words: [],
        };
      },
    ]),
  ),
};
