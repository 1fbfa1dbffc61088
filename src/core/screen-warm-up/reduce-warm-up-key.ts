import type { ScreenInput } from '../screen/ScreenInput.ts';
import { WARM_UP_LIVE_TEXT } from '../text/warm-up-live-text.ts';
import type { WarmUpScreenState, WarmUpStep } from './WarmUpScreen.ts';

const T = WARM_UP_LIVE_TEXT;
const NOTICE_US = 6e6;
/** The same mark again within this time is a key held or pressed twice, µs. */
const REPEAT_US = 1e6;

/** One key of the live warm-up. Nothing is left or marked a second time without a question. */
export function reduceWarmUpKey(state: WarmUpScreenState, input: ScreenInput): WarmUpStep {
  if (input.kind === 'keys-together') return [say(state, T.together), []];
  if (input.kind === 'scan') return [say(state, T.scanIgnored), []];
  const { name, atUs } = input;
  if (state.asking !== null) return answer(state, name, atUs);
  if (state.help) return name === 'escape' || name === 'h' ? [{ ...state, help: false }, []] : [state, []];
  if (name === 'h') return [{ ...state, help: true }, []];
  if (name === 'f') {
    const unit = state.unit === 'F' ? 'C' : 'F';
    return [{ ...state, unit }, [{ kind: 'unit', unit }]];
  }
  if (name === 'q') return [{ ...state, asking: 'quit' }, []];
  if (!state.cautionsAcknowledged)
    return name === 'enter'
      ? [{ ...state, cautionsAcknowledged: true }, [{ kind: 'cautions-acknowledged' }]]
      : [state, []];
  if (name === 'p') return heatersKey(state, atUs);
  if (name === 'u' && state.heaters !== null) {
    const { onUs } = state.heaters;
    return [
      { ...say(state, T.heatersTakenBack), heaters: null, markedUs: null },
      [{ kind: 'undo-heaters-on', atUs: Math.max(atUs, onUs) }],
    ];
  }
  return [state, []];
}

/** Heaters on at `atUs`, by key or by what told it. */
export function heatersOn(state: WarmUpScreenState, atUs: number): WarmUpScreenState {
  const { latestUs, ready } = state;
  const onS = latestUs === null ? 0 : Math.max(0, (ready.timeS ?? 0) + (atUs - latestUs) / 1e6);
  return { ...say(state, T.heatersMarked), asking: null, heaters: { onS, onUs: atUs }, markedUs: atUs };
}

export function say(state: WarmUpScreenState, text: string, tone: 'quiet' | 'caution' = 'quiet') {
  return { ...state, notice: { text, tone, untilUs: state.nowUs + NOTICE_US * state.speed } };
}

function heatersKey(state: WarmUpScreenState, atUs: number): WarmUpStep {
  if (state.markedUs !== null && atUs - state.markedUs < REPEAT_US * state.speed) return [state, []];
  if (state.heaters !== null) return [{ ...state, asking: 'heaters' }, []];
  return [heatersOn(state, atUs), [{ kind: 'heaters-on', atUs }]];
}

function answer(state: WarmUpScreenState, name: string, atUs: number): WarmUpStep {
  if (name === 'escape') return [{ ...state, asking: null }, []];
  if (name !== 'y') return [state, []];
  if (state.asking === 'quit') return [{ ...state, asking: null }, [{ kind: 'quit' }]];
  return [heatersOn(state, atUs), [{ kind: 'heaters-on', atUs }]];
}
