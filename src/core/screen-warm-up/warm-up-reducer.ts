import { classifyInput } from '../screen/classify-input.ts';
import { reducePlatenReading } from './reduce-platen-reading.ts';
import { heatersOn, reduceWarmUpKey, say } from './reduce-warm-up-key.ts';
import type { WarmUpScreenEvent, WarmUpScreenIntent, WarmUpScreenState, WarmUpStep } from './WarmUpScreen.ts';

/** The live warm-up: one event in, the next state and what is to be done out. */
export function warmUpReducer(before: WarmUpScreenState, event: WarmUpScreenEvent): WarmUpStep {
  const nowUs = Math.max(before.nowUs, event.atUs);
  const notice = before.notice !== null && before.notice.untilUs < nowUs ? null : before.notice;
  const state = { ...before, nowUs, notice };
  switch (event.kind) {
    case 'reading':
      return reducePlatenReading(state, event);
    case 'counts':
      return [{ ...state, counts: event.counts }, []];
    case 'link':
      return [
        {
          ...state,
          link: event.link,
          openedUs: state.openedUs ?? (event.link.kind === 'open' ? event.atUs : null),
        },
        [],
      ];
    case 'store':
      return [{ ...state, store: event.store }, []];
    case 'heaters-on':
      return [heatersOn(state, event.atUs), [{ kind: 'heaters-on', atUs: event.atUs }]];
    case 'notice':
      return [say(state, event.text, 'caution'), []];
    case 'tick':
    case 'input':
      return withInput(state, event.kind === 'input' ? event.input : { kind: 'tick', atUs: event.atUs });
  }
}

function withInput(before: WarmUpScreenState, raw: Parameters<typeof classifyInput>[1]): WarmUpStep {
  const { buffer, inputs } = classifyInput(before.input, raw);
  let state: WarmUpScreenState = { ...before, input: buffer };
  const all: WarmUpScreenIntent[] = [];
  for (const input of inputs) {
    const [next, intents] = reduceWarmUpKey(state, input);
    state = next;
    all.push(...intents);
  }
  return [state, all];
}
