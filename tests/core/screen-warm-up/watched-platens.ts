import type { ReadingValue } from '../../../src/core/reading/StreamEvent.ts';
import { startWarmUpScreen } from '../../../src/core/screen-warm-up/start-warm-up-screen.ts';
import type { WarmUpScreenEvent, WarmUpScreenState } from '../../../src/core/screen-warm-up/WarmUpScreen.ts';
import { warmUpReducer } from '../../../src/core/screen-warm-up/warm-up-reducer.ts';
import { createReadyWatch } from '../../../src/core/warm-up/create-ready-watch.ts';
import type { ChannelFault } from '../../../src/core/wire/WireEvent.ts';

// 450 °F and ±5 °F in °C by the definition of the scales (exact).
export const SET_C = (450 - 32) / 1.8;
export const RULE = { bandC: 5 / 1.8, forS: 300 };
const PLATENS = ['upper platen', 'lower platen'].map((label) => ({ label, setPointC: SET_C }));

/** °C, a fault, or nothing; two where upper and lower differ. */
export type Value = number | null | ChannelFault;
export type Sample = Value | readonly [Value, Value];

export interface Watched {
  readonly simulated?: boolean;
  readonly cautionsAcknowledged?: boolean;
}

/** The live warm-up after readings of both platens once a second, the last of them just now. */
export function watched(
  samples: readonly Sample[],
  { simulated = false, cautionsAcknowledged = true }: Watched = {},
): WarmUpScreenState {
  const watch = createReadyWatch({ rule: RULE, platens: PLATENS });
  let state = startWarmUpScreen({
    pressName: 'North',
    readerName: '/dev/ttyACM0',
    simulated,
    speed: 1,
    rule: RULE,
    storePath: '/shop/store.db',
    channels: [
      { channel: 0, role: 'upper-platen' },
      { channel: 1, role: 'lower-platen' },
    ],
    unit: 'F',
    ready: watch.state,
    nowUs: 0,
    cautionsAcknowledged,
  });
  state = stepped(state, { kind: 'link', link: { kind: 'open' }, atUs: 0 });
  state = stepped(state, { kind: 'store', store: { p99Ms: 10, freeBytes: 82e9, trouble: null }, atUs: 0 });
  for (const [second, sample] of samples.entries()) {
    const both: readonly Value[] = Array.isArray(sample) ? sample : [sample as Value, sample as Value];
    const values = both.map(readingValue);
    const ready = watch.accept(
      second,
      values.map((value) => (value.kind === 'temperature' ? value.temperatureC : null)),
    );
    const counts = { lines: second + 1, readings: second + 1, lost: 0, gaps: 0 };
    state = stepped(state, { kind: 'counts', counts, atUs: second * 1e6 });
    state = stepped(state, { kind: 'reading', ready, values, atUs: second * 1e6 });
  }
  return state;
}

export function stepped(state: WarmUpScreenState, event: WarmUpScreenEvent): WarmUpScreenState {
  return warmUpReducer(state, event)[0];
}

/** `laterS` seconds on, nothing having come. */
export function later(state: WarmUpScreenState, laterS: number): WarmUpScreenState {
  return stepped(state, { kind: 'tick', atUs: state.nowUs + laterS * 1e6 });
}

/** A key pressed `laterS` seconds on, and let stand alone. Returns all that was wished. */
export function pressed(state: WarmUpScreenState, key: string, laterS = 0.2) {
  const atUs = state.nowUs + laterS * 1e6;
  const named = { Enter: 'enter', Esc: 'escape' }[key];
  const input =
    named === undefined
      ? ({ kind: 'character', character: key, atUs } as const)
      : ({ kind: 'named', name: named as 'enter' | 'escape', atUs } as const);
  const [down, one] = warmUpReducer(state, { kind: 'input', input, atUs });
  const [up, two] = warmUpReducer(down, { kind: 'tick', atUs: atUs + 60_000 });
  return { state: up, intents: [...one, ...two] };
}

export const lost = (state: WarmUpScreenState): WarmUpScreenState =>
  stepped(state, {
    kind: 'link',
    link: { kind: 'lost', sinceUs: state.nowUs, cause: 'unplugged' },
    atUs: state.nowUs,
  });

export const steady = (count: number, value: Sample): readonly Sample[] =>
  new Array<Sample>(count).fill(value);

/** From `fromC` by `rateCPerS` a second. */
export const rising = (count: number, fromC: number, rateCPerS: number): readonly Sample[] =>
  Array.from({ length: count }, (_, second) => fromC + second * rateCPerS);

function readingValue(value: Value): ReadingValue {
  if (value === null) return { kind: 'missing' };
  return typeof value === 'number'
    ? { kind: 'temperature', temperatureC: value }
    : { kind: 'fault', fault: value };
}

/** A second and a half later, so that the next key is no repeat; the reading still counts as new. */
const rested = (state: WarmUpScreenState) => later(state, 1.5);

/** Heaters marked when watching began, nothing warmer 400 s on. */
function noRise(): WarmUpScreenState {
  const marked = { onS: 1, onUs: 1e6 };
  return { ...watched(steady(400, 20)), heaters: marked, markedUs: marked.onUs };
}

/** The live warm-up in each of its states. */
export const WARM_UP_STATES = {
  'no reading yet': () => watched([]),
  'silent reader': () => later(watched([]), 12),
  'cautions to read': () => watched(steady(3, 20), { cautionsAcknowledged: false }),
  cold: () => watched(steady(40, [20, 21])),
  'cold, heaters on': () => rested(pressed(watched(steady(40, [20, 21])), 'p').state),
  'heaters on for long, nothing rises': () => noRise(),
  heating: () => watched(rising(600, 20, 0.3)),
  'heating, simulated': () => watched(rising(600, 20, 0.3), { simulated: true }),
  'heating, heaters marked': () => rested(pressed(watched(rising(600, 20, 0.3)), 'p').state),
  near: () => watched(rising(680, 20, 0.3)),
  'above band': () => watched(steady(20, SET_C + 20)),
  'in band': () => watched(steady(61, SET_C)),
  ready: () => watched(steady(302, SET_C)),
  'fell out of band': () => watched([...steady(302, SET_C), ...steady(20, [SET_C, SET_C - 8])]),
  cooling: () => watched([...steady(302, SET_C), ...rising(600, SET_C, -0.2)]),
  'probe fault': () => watched([...steady(20, 200), ['open-circuit', 200]]),
  'no reading of one': () => watched(steady(20, [200, null])),
  stale: () => later(watched(steady(302, SET_C)), 6),
  'reader lost': () => lost(watched(steady(302, SET_C))),
  help: () => pressed(watched(rising(600, 20, 0.3)), 'h').state,
  'leaving asked': () => pressed(watched(rising(600, 20, 0.3)), 'q').state,
  'heaters on again asked': () => pressed(pressed(watched(steady(40, 20)), 'p').state, 'p', 3).state,
} satisfies Readonly<Record<string, () => WarmUpScreenState>>;
