import { EMPTY_INPUT } from '../../../../src/core/screen/ScreenInput.ts';
import type { WarmUpScreenState } from '../../../../src/core/screen-warm-up/WarmUpScreen.ts';
import { warmUpReducer } from '../../../../src/core/screen-warm-up/warm-up-reducer.ts';
import { createReadyWatch } from '../../../../src/core/warm-up/create-ready-watch.ts';

// 450 °F and ±5 °F in °C by the definition of the scales (exact).
const SET_C = (450 - 32) / 1.8;
const RULE = { bandC: 5 / 1.8, forS: 300 };
const PLATENS = ['upper platen', 'lower platen'].map((label) => ({ label, setPointC: SET_C }));

/** Readings of both platens once a second, the last of them just now. */
function readings(temperaturesC: readonly (number | null)[], simulated = false): WarmUpScreenState {
  const watch = createReadyWatch({ rule: RULE, platens: PLATENS });
  let state: WarmUpScreenState = {
    pressName: 'North',
    readerName: '/dev/ttyACM0',
    simulated,
    speed: 1,
    rule: RULE,
    unit: 'F',
    storePath: '/shop/store.db',
    ready: watch.state,
    latestUs: null,
    nowUs: 0,
    link: { kind: 'open' },
    store: { p99Ms: 10, freeBytes: 82e9, trouble: null },
    rung: false,
    input: EMPTY_INPUT,
  };
  for (const [second, temperatureC] of temperaturesC.entries()) {
    const ready = watch.accept(second, [temperatureC, temperatureC]);
    [state] = warmUpReducer(state, { kind: 'reading', ready, atUs: second * 1e6 });
  }
  return state;
}

const steady = (count: number, temperatureC: number) => new Array<number>(count).fill(temperatureC);
const lost = (state: WarmUpScreenState) =>
  warmUpReducer(state, {
    kind: 'link',
    link: { kind: 'lost', sinceUs: state.nowUs, cause: 'unplugged' },
    atUs: state.nowUs,
  })[0];

/** The live warm-up in each of its states. */
export const WARM_UP_STATES: Readonly<Record<string, () => WarmUpScreenState>> = {
  'no reading yet': () => readings([]),
  heating: () => readings(Array.from({ length: 600 }, (_, second) => 20 + second * 0.3)),
  'heating, simulated': () =>
    readings(
      Array.from({ length: 600 }, (_, second) => 20 + second * 0.3),
      true,
    ),
  'above band': () => readings(steady(20, SET_C + 20)),
  'in band': () => readings(steady(61, SET_C)),
  ready: () => readings(steady(302, SET_C)),
  'probe fault': () => readings([...steady(20, 200), null]),
  stale: () => {
    const state = readings(steady(302, SET_C));
    return warmUpReducer(state, { kind: 'tick', atUs: state.nowUs + 6e6 })[0];
  },
  'reader lost': () => lost(readings(steady(302, SET_C))),
};
