import type { OperatorMark } from '../reading/StreamEvent.ts';
import { SCREEN_TEXT } from '../text/screen-text.ts';
import { withNotice } from './notice.ts';
import { speedOf } from './pace.ts';
import type { Reduced } from './reduce-key.ts';
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
    markKeyUs: { ...state.markKeyUs, [key]: atUs, latest: atUs },
    marksTaken: [...before, kind],
    closedMarksUs: kind === 'press-closed' ? [...state.closedMarksUs, atUs] : state.closedMarksUs,
    takenBack: state.takenBack?.kind === kind ? null : state.takenBack,
    spoiltReason: wanted.kind === 'spoilt' ? wanted.reason : state.spoiltReason,
  };
  return [
    withNotice(marked, SCREEN_TEXT.marked[kind], 'good', atUs),
    [{ kind: 'mark', mark: wanted, atUs, ...(by === undefined ? {} : { by }) }],
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
    markKeyUs: { ...state.markKeyUs, latest: atUs },
    marksTaken: [...state.marksTaken, ...more],
    closedMarksUs: kind === 'press-closed' && state.closedMarksUs.length === 0 ? [atUs] : state.closedMarksUs,
  };
}
