import { STATUS_TEXT } from '../text/status-text.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { ViewLine } from './TrialView.ts';

/** A part of the lowest line, and how it is said where room is short. */
export interface StatusPart extends ViewLine {
  readonly brief?: string;
}

/** Reader, rate, what was lost, free disk, store, and how long until a reading is on disk, most asked for first. */
export function statusLines(state: TrialScreenState): readonly StatusPart[] {
  const lines: StatusPart[] = [];
  const { link, session, store } = state;
  const { readerName, storePath } = state.setup;
  const say = STATUS_TEXT;
  const shortName = readerName === say.simulatedReader ? say.simulated : lastPart(readerName);
  if (link.kind === 'lost')
    lines.push({ text: say.lost(readerName), brief: say.lost(shortName), role: 'fault' });
  else {
    const told = (name: string) => (link.kind === 'opening' ? say.opening(name) : name);
    lines.push({ text: told(readerName), brief: told(shortName), role: 'quiet' });
  }
  if (state.intervalS !== null && state.intervalS > 0) {
    lines.push({ text: say.rate(1 / state.intervalS), role: 'quiet' });
  }
  if (session !== null) {
    const { counts } = session;
    const bad = counts.garbage + counts.badChecksum + counts.malformed + counts.overLong + counts.cutOff;
    const lost = bad + counts.lostSamples;
    const role = lost > 0 ? 'caution' : 'quiet';
    lines.push({ text: say.lostLines(lost), brief: say.lostBrief(lost), role });
    if (counts.gaps > 0) lines.push({ text: say.gaps(counts.gaps), role: 'caution' });
  }
  if (store?.trouble) lines.push({ text: say.storeTrouble(store.trouble), role: 'fault' });
  if (store !== null && store.freeBytes !== null) {
    lines.push({ text: say.free(store.freeBytes), role: store.freeBytes < 0.5e9 ? 'caution' : 'quiet' });
  }
  lines.push({ text: say.store(storePath), brief: lastPart(storePath), role: 'quiet' });
  if (store !== null && !store.trouble && store.p99Ms !== null)
    lines.push({ text: say.onDisk(store.p99Ms), brief: say.onDiskBrief(store.p99Ms), role: 'quiet' });
  return lines;
}

/** The name of a file or port without its folder. */
function lastPart(path: string): string {
  return path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
}
