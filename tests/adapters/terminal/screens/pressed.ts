import { NAMED } from './key-names.ts';

/** Nothing of these is a key's work: time goes on, and a message only tells why nothing was done. */
const LEFT_OUT = new Set([
  'nowUs',
  'input',
  'notice',
  'facts',
  'session',
  'trace',
  'recent',
  'finished',
  'band',
  'latest',
  'shown',
  'flashUntilUs',
  'markKeyUs',
]);

/** A state as text, without what changes by itself. */
export function essence(state: object): string {
  const kept = Object.entries(state).filter(([name]) => !LEFT_OUT.has(name));
  return JSON.stringify(kept, (_name, value: unknown) => (typeof value === 'function' ? '…' : value));
}

/** One key as raw input at `atUs`. */
export function rawKey(name: string, atUs: number) {
  const named = NAMED.find((one) => one === name);
  return named === undefined
    ? ({ kind: 'character', character: name === 'space' ? ' ' : name, atUs } as const)
    : ({ kind: 'named', name: named, atUs } as const);
}

/** A key pressed in a pure reducer and let stand alone. Tells whether the state or a wish came of it. */
export function pressIn<State extends object, Intent>(
  state: State,
  reduce: (state: State, event: PressEvent) => readonly [State, readonly Intent[]],
  name: string,
  nowUs: number,
): boolean {
  const at = nowUs + 200_000;
  const press: PressEvent = { kind: 'input', input: rawKey(name, at), atUs: at };
  const tick: PressEvent = { kind: 'tick', atUs: at + 100_000 };
  const wait: PressEvent = { kind: 'tick', atUs: at + 100_000 };
  const [idle, idleIntents] = reduce(state, wait);
  const [down, one] = reduce(state, press);
  const [after, two] = reduce(down, tick);
  return one.length + two.length > idleIntents.length || essence(after) !== essence(idle);
}

type PressEvent =
  | { readonly kind: 'input'; readonly input: ReturnType<typeof rawKey>; readonly atUs: number }
  | { readonly kind: 'tick'; readonly atUs: number };
