import type { OperatorMark } from '../reading/StreamEvent.ts';
import { CLOSED_AGAIN } from '../text/closed-again-text.ts';
import { SCREEN_TEXT } from '../text/screen-text.ts';
import { withNotice } from './notice.ts';
import { speedOf } from './pace.ts';
import type { Reduced } from './reduce-key.ts';
import type { TrialIntent } from './TrialIntent.ts';
import type { MarkTaken, TrialScreenState } from './TrialScreenState.ts';

/** Repeats of the same mark key within this time are ignored, µs. */
const MARK_REPEAT_US = 1_000_000;

/** Whether the same mark key was taken less than 1 s ago. */
export function isRepeat(state: TrialScreenState, key: string, atUs: number): boolean {
  const before = state.markKeyUs[key];
  return before !== undefined && atUs - before < MARK_REPEAT_US * speedOf(state);
}

/** Puts a mark, stamped with the moment of the key, unless the same key was taken less than 1 s ago. */
export function markTaken(
  state: TrialScreenState,
  key: string,
  wanted: Extract<OperatorMark, { readonly kind: MarkTaken }>,
  atUs: number,
  { by }: { readonly by?: 'pedal' } = {},
): Reduced {
  if (isRepeat(state, key, atUs)) return [withNotice(state, SCREEN_TEXT.repeated, 'quiet', atUs), []];
  const { kind } = wanted;
  // Spoilt twice is spoilt once, with the later reason: one undo takes it back.
  const before = kind === 'spoilt' ? state.marksTaken.filter((one) => one !== kind) : state.marksTaken;
  const marked: TrialScreenState = {
    ...state,
    markKeyUs: { ...state.markKeyUs, [key]: atUs },
    marksTaken: [...before, kind],
    closedMarksUs: kind === 'press-closed' ? [...state.closedMarksUs, atUs] : state.closedMarksUs,
  };
  return [
    withNotice(marked, SCREEN_TEXT.marked[kind], 'good', atUs),
    [{ kind: 'mark', mark: wanted, atUs, ...(by === undefined ? {} : { by }) }],
  ];
}

/** Takes back the latest mark. Where it had corrected one before, that one holds again. */
export function undoMark(state: TrialScreenState, atUs: number): Reduced {
  const what = state.marksTaken.at(-1);
  if (what === undefined) return [withNotice(state, SCREEN_TEXT.nothingToUndo, 'quiet', atUs), []];
  const undone: TrialScreenState = { ...state, marksTaken: state.marksTaken.slice(0, -1), markKeyUs: {} };
  const undo: TrialIntent = { kind: 'mark', mark: { kind: 'undo', what }, atUs };
  if (what !== 'press-closed') return [withNotice(undone, SCREEN_TEXT.undone[what], 'good', atUs), [undo]];
  const closedMarksUs = state.closedMarksUs.slice(0, -1);
  const earlierUs = closedMarksUs.at(-1);
  const left = { ...undone, closedMarksUs };
  if (earlierUs === undefined) return [withNotice(left, SCREEN_TEXT.undone[what], 'good', atUs), [undo]];
  const agoS = Math.max(0, (atUs - earlierUs) / 1e6);
  return [
    withNotice(left, CLOSED_AGAIN.restored, 'good', atUs),
    [undo, { kind: 'mark', mark: { kind: 'press-closed', agoS }, atUs }],
  ];
}

/** What a contact marked can be taken back as well: one entry for each source that told press closed, one for the opening. */
export function withContactMarks(
  state: TrialScreenState,
  kind: 'press-closed' | 'opened',
  sources: number,
  atUs: number,
): TrialScreenState {
  const known = state.marksTaken.filter((one) => one === kind).length;
  if (known >= sources) return state;
  const more = Array.from({ length: sources - known }, () => kind);
  return {
    ...state,
    marksTaken: [...state.marksTaken, ...more],
    closedMarksUs: kind === 'press-closed' && state.closedMarksUs.length === 0 ? [atUs] : state.closedMarksUs,
  };
}
