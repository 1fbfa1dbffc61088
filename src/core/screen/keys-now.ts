import { KEY_TEXT, type KeyHint } from '../text/keys-text.ts';
import { isRunOpen } from './reduce-reading.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** The keys that do something now, the next one first. */
export function keysNow(state: TrialScreenState): readonly KeyHint[] {
  const k = KEY_TEXT;
  switch (state.dialog?.kind) {
    case 'cautions':
      return [k.read];
    case 'quit':
      return [k.yes, k.no];
    case 'runs':
      return [k.choose, k.setAside, k.takeIn, k.automatic, k.back];
    case 'accept-rule':
      return [k.choose, k.enter, k.back];
    case undefined:
      break;
    default:
      return [k.enter, k.back];
  }
  const keys: KeyHint[] = [];
  const run = state.session?.run;
  if (isRunOpen(state)) {
    if (run?.phase !== 'opened') {
      if (run?.pressClosed?.by !== 'key') keys.push(k.closed);
      keys.push(k.opened);
    }
    keys.push(k.spoilt);
  } else {
    keys.push(k.closed);
    if ((state.standing.statistics?.runs ?? 0) > 0) keys.push(k.accept);
    if (state.standing.runs.length > 0) keys.push(k.runs);
    if (state.lastResult !== null) keys.push(k.spoilt);
  }
  if (state.latestMark !== null) keys.push(k.undo);
  return [...keys, k.note, k.unit, k.quit];
}
