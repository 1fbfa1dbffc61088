import { numberText } from '../text/units-text.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { ViewLine } from './TrialView.ts';

/** Reader, rate, what was lost, and the store, for the lowest line. Shortest first is kept when room is short. */
export function statusLines(state: TrialScreenState): readonly ViewLine[] {
  const lines: ViewLine[] = [];
  const { link, session, store } = state;
  const word = link.kind === 'lost' ? 'LOST ' : link.kind === 'opening' ? 'opening ' : '';
  lines.push({ text: `${word}${state.setup.readerName}`, role: link.kind === 'lost' ? 'fault' : 'quiet' });
  if (state.intervalS !== null && state.intervalS > 0) {
    lines.push({ text: `${numberText(1 / state.intervalS, 1)} readings/s`, role: 'quiet' });
  }
  if (session !== null) {
    const { counts } = session;
    const bad = counts.garbage + counts.badChecksum + counts.malformed + counts.overLong + counts.cutOff;
    const lost = bad + counts.lostSamples;
    lines.push({
      text: `${lost} lost ${lost === 1 ? 'line' : 'lines'}`,
      role: lost > 0 ? 'caution' : 'quiet',
    });
    if (counts.gaps > 0)
      lines.push({ text: `${counts.gaps} ${counts.gaps === 1 ? 'gap' : 'gaps'}`, role: 'caution' });
  }
  if (store?.trouble) lines.push({ text: `STORE: ${store.trouble}`, role: 'fault' });
  else if (store !== null && store.p99Ms !== null) {
    lines.push({ text: `on disk in ${numberText(store.p99Ms, 0)} ms`, role: 'quiet' });
  }
  if (store !== null && store.freeBytes !== null) {
    const free = store.freeBytes / 1e9;
    lines.push({
      text: `${numberText(free, free < 10 ? 1 : 0)} GB free`,
      role: free < 0.5 ? 'caution' : 'quiet',
    });
  }
  lines.push({ text: `store ${state.setup.storePath}`, role: 'quiet' });
  return lines;
}
