import { CLOSED_AGAIN } from '../text/closed-again-text.ts';
import { MARK_LABEL, SCREEN_TEXT } from '../text/screen-text.ts';
import { UNDO_TEXT } from '../text/undo-text.ts';
import { markTaken } from './mark-taken.ts';
import { withNotice } from './notice.ts';
import { speedOf } from './pace.ts';
import type { Reduced } from './reduce-key.ts';
import { isRunOpen } from './reduce-reading.ts';
import type { TrialIntent } from './TrialIntent.ts';
import type { Dialog, MarkTaken, TakenBack, TrialScreenState } from './TrialScreenState.ts';

/** A mark older than this is taken back only after a question, µs. */
const OLD_MARK_US = 5_000_000;

/** Key U: a fresh mark is taken back at once, an older one after a question; an opening can be taken back for 5 s only. */
export function reduceUndoKey(state: TrialScreenState, atUs: number): Reduced {
  const what = state.marksTaken.at(-1);
  if (what === undefined) return [withNotice(state, SCREEN_TEXT.nothingToUndo, 'quiet', atUs), []];
  const sinceUs = state.markKeyUs.latest;
  // The closing is old by the run's own time; the others by the time of the person.
  const oldUs = OLD_MARK_US * (what === 'press-closed' ? 1 : speedOf(state));
  if (what === 'opened' || (sinceUs !== undefined && atUs - sinceUs <= oldUs))
    return undoMark(state, what, atUs);
  return [{ ...state, dialog: { kind: 'undo', what, askedUs: atUs } }, []];
}

/** An answer to that question: Y takes the mark back; what marks something is never missed for it. */
export function reduceUndoAnswer(
  state: TrialScreenState,
  { what }: Extract<Dialog, { readonly kind: 'undo' }>,
  name: string,
  atUs: number,
): Reduced {
  const closed = { ...state, dialog: null };
  if (name === 'y') return undoMark(closed, what, atUs);
  if (name === 'n') return [closed, []];
  return name === 'o' && isRunOpen(state) && state.session?.run.phase !== 'opened'
    ? markTaken(closed, 'o', { kind: 'opened' }, atUs)
    : [state, []];
}

/** Takes back the latest mark. Where it had corrected one before, that one holds again. */
function undoMark(state: TrialScreenState, what: MarkTaken, atUs: number): Reduced {
  const undone: TrialScreenState = {
    ...state,
    marksTaken: state.marksTaken.slice(0, -1),
    markKeyUs: {},
    takenBack: takenBack(state, what),
  };
  const undo: TrialIntent = { kind: 'mark', mark: { kind: 'undo', what }, atUs };
  if (what !== 'press-closed') return [withNotice(undone, SCREEN_TEXT.undone[what], 'good', atUs), [undo]];
  if (otherMarkHolds(state))
    return [
      withNotice(
        { ...undone, takenBack: null, closedMarksUs: lessOne(state) },
        UNDO_TEXT.otherHeld,
        'caution',
        atUs,
      ),
      [undo],
    ];
  const closedMarksUs = state.closedMarksUs.slice(0, -1);
  const earlierUs = closedMarksUs.at(-1);
  const left = { ...undone, closedMarksUs };
  if (earlierUs === undefined) return [withNotice(left, SCREEN_TEXT.undone[what], 'good', atUs), [undo]];
  const agoS = Math.max(0, (atUs - earlierUs) / 1e6);
  return [
    withNotice({ ...left, takenBack: null }, CLOSED_AGAIN.restored, 'good', atUs),
    [undo, { kind: 'mark', mark: { kind: 'press-closed', agoS }, atUs }],
  ];
}

/** Key and contact both marked the closing: with one taken back the other still times the run. */
export function otherMarkHolds({ session }: TrialScreenState): boolean {
  const all = session?.run.pressClosed?.all ?? [];
  return all.filter(({ by }) => by === 'key' || by === 'contact').length > 1;
}

/** One moment is kept for the mark that still holds. */
function lessOne({ closedMarksUs }: TrialScreenState): readonly number[] {
  return closedMarksUs.length > 1 ? closedMarksUs.slice(0, -1) : closedMarksUs;
}

function takenBack(state: TrialScreenState, what: MarkTaken): TakenBack | null {
  if (what === 'spoilt')
    return state.spoiltReason === null ? null : { kind: what, reason: state.spoiltReason };
  if (what === 'press-closed') {
    const markedUs = state.closedMarksUs.at(-1);
    return markedUs === undefined ? null : { kind: what, atUs: markedUs };
  }
  const openedS = state.marks.find(({ label }) => label === MARK_LABEL.opened)?.timeS;
  const { latest, latestUs } = state;
  if (openedS === undefined || latest === null || latestUs === null) return null;
  return { kind: what, atUs: latestUs - (latest.timeS - openedS) * 1e6 };
}

/** Key P: the mark taken back last stands again, at its own moment. */
export function putMarkBack(state: TrialScreenState, atUs: number): Reduced {
  const back = state.takenBack;
  if (back === null) return [state, []];
  const again: TrialScreenState = {
    ...state,
    markKeyUs: { ...state.markKeyUs, latest: atUs },
    marksTaken: [...state.marksTaken, back.kind],
    closedMarksUs: back.kind === 'press-closed' ? [...state.closedMarksUs, back.atUs] : state.closedMarksUs,
    takenBack: null,
  };
  const mark =
    back.kind === 'spoilt'
      ? ({ kind: 'spoilt', reason: back.reason } as const)
      : ({ kind: back.kind, agoS: Math.max(0, (atUs - back.atUs) / 1e6) } as const);
  return [withNotice(again, SCREEN_TEXT.putBack[back.kind], 'good', atUs), [{ kind: 'mark', mark, atUs }]];
}
