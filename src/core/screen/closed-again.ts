import type { OperatorMark } from '../reading/StreamEvent.ts';
import { CLOSED_AGAIN } from '../text/closed-again-text.ts';
import { SCREEN_TEXT } from '../text/screen-text.ts';
import { isRepeat, markTaken } from './mark-taken.ts';
import { withNotice } from './notice.ts';
import { speedOf } from './pace.ts';
import type { Reduced } from './reduce-key.ts';
import { isRunOpen } from './reduce-reading.ts';
import type { TrialIntent } from './TrialIntent.ts';
import type { Dialog, TrialScreenState } from './TrialScreenState.ts';
import { putMarkBack } from './undo-mark.ts';

type ClosedAgain = Extract<Dialog, { readonly kind: 'closed-again' }>;

/** A question that nobody answers goes away, and nothing changes: a later O is the opening at that moment again, s. */
const ASKED_FOR_S = 20;

/** Press closed marked anew so soon after the moment that was taken back is its correction, µs. */
const TAKEN_BACK_US = 10_000_000;

/** True where a hand, a pedal or a contact has marked press closed in the present run. */
export function isMarked({ session, marksTaken }: TrialScreenState): boolean {
  const closed = session?.run.pressClosed ?? null;
  const by = closed === null ? [] : [closed.by, ...closed.all.map((one) => one.by)];
  return marksTaken.includes('press-closed') || by.includes('key') || by.includes('contact');
}

/**
 * Key C or a pedal that types a blank. The first time it marks press closed; in a run that is marked already it asks, so
 * that a good run never becomes suspect by one key. A pedal once the hold is done marks the opening.
 */
export function reduceClosedKey(state: TrialScreenState, name: 'c' | 'space', atUs: number): Reduced {
  const phase = state.session?.run.phase;
  if (phase === 'opened') return [state, []];
  const pedal = name === 'space';
  if (!isMarked(state) && !mayNotHaveClosedNow(state, atUs))
    return markTaken(state, 'c', { kind: 'press-closed' }, atUs, pedal ? { by: 'pedal' } : {});
  if (isRepeat(state, 'c', atUs)) return [withNotice(state, SCREEN_TEXT.repeated, 'quiet', atUs), []];
  if (pedal && phase === 'hold-done') return markTaken(state, 'o', { kind: 'opened' }, atUs, { by: 'pedal' });
  return [askWhatItMeans(state, pedal ? 'pedal' : 'key', atUs), []];
}

/** In a run without a mark: the target is reached already, or press closed was marked before and taken back. */
function mayNotHaveClosedNow(state: TrialScreenState, atUs: number): boolean {
  if (!isRunOpen(state)) return false;
  const { takenBack } = state;
  if (state.session?.run.phase !== 'heating') return true;
  return takenBack?.kind === 'press-closed' && atUs - takenBack.atUs > TAKEN_BACK_US;
}

/** Asks, keeping the moment: whatever the answer, it counts from the key and not from the answer. */
export function askWhatItMeans(
  state: TrialScreenState,
  by: ClosedAgain['by'],
  atUs: number,
): TrialScreenState {
  const { phase } = state.session?.run ?? {};
  const dialog: ClosedAgain = { kind: 'closed-again', by, askedUs: atUs, heating: phase === 'heating' };
  return { ...state, dialog, markKeyUs: { ...state.markKeyUs, c: atUs } };
}

/** Without an answer for 20 s the run goes on as it is. */
export function forgetQuestion(state: TrialScreenState, nowUs: number): TrialScreenState {
  const { dialog } = state;
  if (dialog?.kind !== 'closed-again' && dialog?.kind !== 'undo') return state;
  const waitedS = (nowUs - dialog.askedUs) / 1e6;
  if (waitedS <= ASKED_FOR_S * speedOf(state)) return state;
  return withNotice({ ...state, dialog: null }, CLOSED_AGAIN.kept, 'quiet', nowUs);
}

/** An answer. C and pedal repeated move the moment; nothing else but the offered keys does anything. */
export function reduceClosedAgain(
  state: TrialScreenState,
  dialog: ClosedAgain,
  name: string,
  atUs: number,
): Reduced {
  const closed = { ...state, dialog: null };
  const agoS = Math.max(0, (atUs - dialog.askedUs) / 1e6);
  switch (name) {
    case 'c':
    case 'space':
      return isRepeat(state, 'c', atUs) ? [state, []] : reduceClosedKey(closed, name, atUs);
    case 'o':
      return isRunOpen(state) ? markTaken(closed, 'o', { kind: 'opened', agoS }, atUs) : [closed, []];
    case 'n': {
      const begun = {
        ...closed,
        markKeyUs: { ...closed.markKeyUs, latest: atUs },
        marksTaken: ['press-closed' as const],
        closedMarksUs: [dialog.askedUs],
        takenBack: null,
      };
      return [
        withNotice(begun, CLOSED_AGAIN.newRun, 'good', atUs),
        [closedMark({ kind: 'press-closed', agoS }, atUs)],
      ];
    }
    case 'p':
      return state.takenBack?.kind === 'press-closed' ? putMarkBack(closed, atUs) : [state, []];
    case 't':
      return dialog.heating ? correct(closed, dialog.askedUs, agoS, atUs) : [state, []];
    default:
      return [state, []];
  }
}

/** Press closed lies where it was asked about: every mark before is taken back, then it is marked anew. */
function correct(state: TrialScreenState, askedUs: number, agoS: number, atUs: number): Reduced {
  const sources = new Set(state.session?.run.pressClosed?.all.map((one) => one.by));
  const marks = Math.max(1, Number(sources.has('key')) + Number(sources.has('contact')));
  const undo = closedMark({ kind: 'undo', what: 'press-closed' }, atUs);
  const corrected: TrialScreenState = {
    ...state,
    markKeyUs: { ...state.markKeyUs, latest: atUs },
    marksTaken: [...state.marksTaken, 'press-closed'],
    closedMarksUs: [...state.closedMarksUs, askedUs],
    takenBack: null,
  };
  return [
    withNotice(corrected, CLOSED_AGAIN.corrected, 'good', atUs),
    [...Array.from({ length: marks }, () => undo), closedMark({ kind: 'press-closed', agoS }, atUs)],
  ];
}

function closedMark(mark: OperatorMark, atUs: number): TrialIntent {
  return { kind: 'mark', mark, atUs };
}
