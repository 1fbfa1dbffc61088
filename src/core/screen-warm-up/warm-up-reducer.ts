import { classifyInput } from '../screen/classify-input.ts';
import type { WarmUpScreenEvent, WarmUpScreenIntent, WarmUpScreenState } from './WarmUpScreen.ts';

/** The live warm-up: one event in, the next state and what is to be done out. The bell rings once, at the first READY. */
export function warmUpReducer(
  before: WarmUpScreenState,
  event: WarmUpScreenEvent,
): readonly [WarmUpScreenState, readonly WarmUpScreenIntent[]] {
  const state = { ...before, nowUs: Math.max(before.nowUs, event.atUs) };
  switch (event.kind) {
    case 'reading': {
      const rings = event.ready.ready && !state.rung;
      const latestUs = Math.max(state.latestUs ?? event.atUs, event.atUs);
      return [
        { ...state, ready: event.ready, latestUs, rung: state.rung || rings },
        rings ? [{ kind: 'bell' }] : [],
      ];
    }
    case 'link':
      return [{ ...state, link: event.link }, []];
    case 'store':
      return [{ ...state, store: event.store }, []];
    case 'tick':
    case 'input':
      return withInput(state, event.kind === 'input' ? event.input : { kind: 'tick', atUs: event.atUs });
  }
}

function withInput(
  before: WarmUpScreenState,
  raw: Parameters<typeof classifyInput>[1],
): readonly [WarmUpScreenState, readonly WarmUpScreenIntent[]] {
  const { buffer, inputs } = classifyInput(before.input, raw);
  let state: WarmUpScreenState = { ...before, input: buffer };
  const intents: WarmUpScreenIntent[] = [];
  for (const input of inputs) {
    if (input.kind !== 'key') continue;
    if (input.name === 'q') intents.push({ kind: 'quit' });
    if (input.name !== 'f') continue;
    const unit = state.unit === 'F' ? 'C' : 'F';
    state = { ...state, unit };
    intents.push({ kind: 'unit', unit });
  }
  return [state, intents];
}
