import { isSettled } from '../ready-check/ready-check.ts';
import { CLOSED_AGAIN } from '../text/closed-again-text.ts';
import { KEY_TEXT, type KeyHint } from '../text/keys-text.ts';
import { REPLAY_TEXT } from '../text/replay-text.ts';
import { isMarked } from './closed-again.ts';
import { REPLAY_SPEEDS } from './pace.ts';
import { currentItem, readyItems } from './ready-items.ts';
import { isRunOpen } from './reduce-reading.ts';
import { scrollsRuns } from './runs-table.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** The keys that do something now, the next one first. */
export function keysNow(state: TrialScreenState): readonly KeyHint[] {
  const k = KEY_TEXT;
  switch (state.dialog?.kind) {
    case 'cautions':
      return [k.read, k.help];
    case 'quit':
      return [k.yes, k.no, k.help];
    case 'closed-again': {
      const { keep, putBack, correct, newRun, opened } = CLOSED_AGAIN.keys;
      const back = state.takenBack?.kind === 'press-closed' ? [putBack] : [];
      return [keep, ...back, ...(state.dialog.heating ? [correct] : []), newRun, opened, k.help];
    }
    case 'undo':
      return [k.no, k.takeBack, ...(isRunOpen(state) ? [k.opened] : []), k.help];
    case 'runs':
      return [k.choose, k.setAside, k.takeIn, k.automatic, k.help, k.back];
    case 'ready':
      return readyKeys(state);
    case 'result':
      return [
        k.accept,
        ...(state.standing.outcome?.budget ? [k.explain] : []),
        k.overlay,
        k.unit,
        k.help,
        k.back,
      ];
    case 'budget':
      return [k.accept, k.overlay, k.help, k.back];
    case 'overlay':
      return [k.accept, k.dwell, k.unit, k.help, k.back];
    case 'help':
      return [k.scroll, k.back];
    case 'accept-rule':
      return [k.choose, k.enter, k.help, k.back];
    case undefined:
      break;
    default:
      return [k.enter, k.back];
  }
  if (state.setup.replay === true) return [...paceKeys(state), k.unit, k.help, k.quit];
  const keys: KeyHint[] = [];
  const run = state.session?.run;
  if (isRunOpen(state)) {
    if (state.notPassed !== null) keys.push(k.whyGoOn);
    if (run?.phase !== 'opened') {
      if (!isMarked(state)) keys.push(k.closed);
      keys.push(k.opened);
    }
    keys.push(k.spoilt);
  } else {
    keys.push(k.closed);
    if (state.setup.readyCheck === true) keys.push(k.check);
    if ((state.standing.statistics?.runs ?? 0) > 0) keys.push(k.dwell, k.accept);
    if (state.standing.runs.length > 0) keys.push(k.runs);
    if (scrollsRuns(state)) keys.push(k.otherRuns);
    if (state.finished.length > 0) keys.push(k.overlay);
    if (state.lastResult !== null) keys.push(k.spoilt);
  }
  if (state.marksTaken.length > 0) keys.push(k.undo);
  if (state.takenBack !== null) keys.push(k.putBack);
  return [...keys, k.note, k.unit, k.help, k.quit];
}

function paceKeys({ pace, replayOver }: TrialScreenState): readonly KeyHint[] {
  if (pace === null || replayOver) return [];
  const { pause, goOn, faster, slower } = REPLAY_TEXT.keys;
  return [
    pace.paused ? goOn : pause,
    ...(pace.speed < REPLAY_SPEEDS[REPLAY_SPEEDS.length - 1]! ? [faster] : []),
    ...(pace.speed > REPLAY_SPEEDS[0] ? [slower] : []),
  ];
}

function readyKeys(state: TrialScreenState): readonly KeyHint[] {
  const k = KEY_TEXT;
  const items = readyItems(state);
  if (items.every(isSettled)) return [k.ready, k.closed, k.choose, k.bell, k.help, k.back];
  const current = currentItem(items, state.dialog?.kind === 'ready' ? state.dialog.selected : null);
  const open = current !== null && !isSettled(current);
  return [
    ...(current?.state === 'ask' && open ? [k.confirm] : []),
    ...(open ? [k.anyway] : []),
    k.closed,
    k.bell,
    k.choose,
    k.help,
    k.back,
  ];
}
