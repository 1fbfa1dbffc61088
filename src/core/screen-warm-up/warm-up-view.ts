import type { ViewLine } from '../screen/TrialView.ts';
import { diskText } from '../screen-bonding/status-of.ts';
import type { ShellView } from '../screen-shell/ShellView.ts';
import type { KeyHint } from '../text/keys-text.ts';
import { WARM_UP_LIVE_TEXT } from '../text/warm-up-live-text.ts';
import type { WarmUpScreenState } from './WarmUpScreen.ts';
import { warmUpRows } from './warm-up-rows.ts';
import { readingAgeS } from './warm-up-standing.ts';

const T = WARM_UP_LIVE_TEXT;
/** A younger reading needs no word. */
const SHOWN_AGE_S = 2;

/** The live warm-up as a page: title, body, message, the keys that do something now, status. */
export function warmUpView(state: WarmUpScreenState): ShellView {
  return {
    title: state.help ? T.helpTitle : T.title(state.pressName),
    badge: state.simulated ? T.simulated : null,
    body: (size) => warmUpRows(state, size),
    message: messageOf(state),
    keys: keysNow(state),
    status: statusOf(state),
  };
}

function messageOf({ asking, notice }: WarmUpScreenState): ViewLine | null {
  if (asking !== null) return { text: asking === 'quit' ? T.askQuit : T.askHeaters, role: 'strong' };
  return notice === null
    ? null
    : { text: notice.text, role: notice.tone === 'quiet' ? 'plain' : notice.tone };
}

function keysNow(state: WarmUpScreenState): readonly KeyHint[] {
  const k = T.keys;
  if (state.asking !== null) return [k.yes, k.no];
  if (state.help) return [{ ...k.help, does: k.back.does }, k.back];
  if (!state.cautionsAcknowledged) return [k.read, k.unit, k.help, k.quit];
  return [k.heaters, ...(state.heaters === null ? [] : [k.undo]), k.unit, k.help, k.quit];
}

function statusOf(state: WarmUpScreenState): readonly ViewLine[] {
  const { link, readerName, intervalS, counts } = state;
  const ageS = readingAgeS(state);
  const reader: ViewLine =
    link.kind === 'lost'
      ? { text: T.status.lost(readerName), role: 'fault' }
      : { text: link.kind === 'opening' ? T.status.opening(readerName) : readerName, role: 'quiet' };
  const age: ViewLine | null =
    ageS === null
      ? { text: T.status.noReading, role: 'quiet' }
      : ageS < SHOWN_AGE_S * state.speed
        ? null
        : { text: T.status.age(ageS), role: 'caution' };
  // The store's name comes last: it may be long, and the row is cut there.
  const [store, ...disk] = diskText(state.store, state.storePath);
  return [
    reader,
    ...(intervalS === null ? [] : [{ text: T.status.rate(1 / intervalS), role: 'quiet' as const }]),
    ...(age === null ? [] : [age]),
    { text: T.status.lines(counts.lost), role: counts.lost > 0 ? 'caution' : 'quiet' },
    ...disk,
    ...(store === undefined ? [] : [store]),
  ];
}
