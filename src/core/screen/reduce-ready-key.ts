import { isSettled } from '../ready-check/ready-check.ts';
import { READY_PAGE, READY_TITLE, readyWords } from '../text/ready-text.ts';
import { withNotice } from './notice.ts';
import { speedOf } from './pace.ts';
import { currentItem, readyItems } from './ready-items.ts';
import { type Reduced, reduceKey } from './reduce-key.ts';
import type { TrialIntent } from './TrialIntent.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** Between two confirmations, µs. */
const ENTER_APART_US = 500_000;

const RING: TrialIntent = { kind: 'bell', why: 'tried' };

/** Opens the ready check; the bell rings at once where it is the first thing to answer. */
export function openReadyCheck(state: TrialScreenState): Reduced {
  const opened: TrialScreenState = { ...state, dialog: { kind: 'ready', selected: null } };
  return [opened, currentItem(readyItems(state), null)?.name === 'bell' ? [RING] : []];
}

/** A key in the ready check: confirm, go on anyway for a reason, ring the bell, or mark press closed. */
export function reduceReadyKey(
  state: TrialScreenState,
  selected: string | null,
  name: string,
  atUs: number,
): Reduced {
  const items = readyItems(state);
  const current = currentItem(items, selected);
  switch (name) {
    case 'up':
    case 'down': {
      const at = items.findIndex((item) => item.name === current?.name);
      const next = items[Math.min(items.length - 1, Math.max(0, at + (name === 'up' ? -1 : 1)))];
      return [{ ...state, dialog: { kind: 'ready', selected: next?.name ?? null } }, []];
    }
    case 'enter':
      return reduceEnter(state, selected, atUs);
    case 'w':
      if (current === null || isSettled(current))
        return [withNotice(state, READY_PAGE.nothingToOverride, 'quiet', atUs), []];
      return [
        {
          ...state,
          dialog: { kind: 'ready-reason', item: current.name, text: state.reasonsGiven[current.name] ?? '' },
        },
        [],
      ];
    case 'b':
      return [state, [RING]];
    case 'c':
    case 'space':
    case 'f':
    case 'n':
    case 'q': {
      // Press closed must never be missed for a question that is still open.
      const closes = name === 'c' || name === 'space';
      return reduceKey(closes || name !== 'f' ? { ...state, dialog: null } : state, name, atUs);
    }
    default:
      return [state, []];
  }
}

/** A held key repeats: only an Enter that comes 0.5 s after the one before confirms anything. */
function reduceEnter(state: TrialScreenState, selected: string | null, atUs: number): Reduced {
  const before = state.markKeyUs.enter;
  const seen = { ...state, markKeyUs: { ...state.markKeyUs, enter: atUs } };
  return before !== undefined && atUs - before < ENTER_APART_US * speedOf(state)
    ? [withNotice(seen, READY_PAGE.enterHeld, 'quiet', atUs), []]
    : confirm(seen, selected);
}

function confirm(state: TrialScreenState, selected: string | null): Reduced {
  const items = readyItems(state);
  const current = currentItem(items, selected);
  if (items.every(isSettled)) return [{ ...state, dialog: null, ready: { ...state.ready, done: true } }, []];
  if (current?.state !== 'ask') {
    const open = currentItem(items, null);
    const todo = current === null || isSettled(current) ? '' : readyWords(current, state.unit).todo;
    const moved: TrialScreenState = { ...state, dialog: { kind: 'ready', selected: null } };
    return open === null || todo === ''
      ? [moved, []]
      : [withNotice(moved, `${READY_TITLE[open.name]}: ${todo}`, 'caution', state.nowUs), []];
  }
  const ready = { ...state.ready, confirmed: [...state.ready.confirmed, current.name] };
  const gaugePsi = current.name === 'gauge' ? (state.setup.gauge?.gaugePsi ?? null) : state.gaugePsi;
  return openReadyCheck({ ...state, ready, gaugePsi });
}

/** A reason to go on although the line is not in order. */
export function overrideItem(state: TrialScreenState, item: string, reason: string): Reduced {
  const overridden = { ...state.ready.overridden, [item]: reason };
  const stood = readyItems(state).find(({ name }) => name === item);
  const foundThen =
    stood === undefined
      ? state.ready.foundThen
      : { ...state.ready.foundThen, [item]: readyWords(stood, state.unit).found };
  return openReadyCheck({
    ...state,
    // Offered again before the next run, so that it need not be typed with gloves.
    reasonsGiven: { ...state.reasonsGiven, [item]: reason },
    ready: { ...state.ready, overridden, ...(foundThen === undefined ? {} : { foundThen }) },
  });
}
