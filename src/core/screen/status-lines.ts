import { STATUS_TEXT } from '../text/status-text.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { ViewLine } from './TrialView.ts';

/** Reader, rate, what was lost, and the store, for the lowest line. Shortest first is kept when room is short. */
export function statusLines(state: TrialScreenState): readonly ViewLine[] {
  const lines: ViewLine[] = [];
  const { link, session, store } = state;
  const { readerName, storePath } = state.setup;
  const say = STATUS_TEXT;
  if (link.kind === 'lost') lines.push({ text: say.lost(readerName), role: 'fault' });
  else lines.push({ text: link.kind === 'opening' ? say.opening(readerName) : readerName, role: 'quiet' });
  if (state.intervalS !== null && state.intervalS > 0) {
    lines.push({ text: say.rate(1 / state.intervalS), role: 'quiet' });
  }
  if (session !== null) {
    const { counts } = session;
    const bad = counts.garbage + counts.badChecksum + counts.malformed + counts.overLong + counts.cutOff;
    const lost = bad + counts.lostSamples;
    lines.push({ text: say.lostLines(lost), role: lost > 0 ? 'caution' : 'quiet' });
    if (counts.gaps > 0) lines.push({ text: say.gaps(counts.gaps), role: 'caution' });
  }
  if (store?.trouble) lines.push({ text: say.storeTrouble(store.trouble), role: 'fault' });
  else if (store !== null && store.p99Ms !== null) {
    lines.push({ text: say.onDisk(store.p99Ms), role: 'quiet' });
  }
  if (store !== null && store.freeBytes !== null) {
    lines.push({ text: say.free(store.freeBytes), role: store.freeBytes < 0.5e9 ? 'caution' : 'quiet' });
  }
  lines.push({ text: say.store(storePath), role: 'quiet' });
  return lines;
}
