import type { RunEvent } from '../run/RunEvent.ts';
import { CLOSED_AGAIN } from '../text/closed-again-text.ts';
import { MARK_LABEL, SCREEN_TEXT } from '../text/screen-text.ts';
import { secondsText } from '../text/units-text.ts';
import { askWhatItMeans } from './closed-again.ts';
import { isHoldUnseen } from './hold-standing.ts';
import { withContactMarks } from './mark-taken.ts';
import { withNotice } from './notice.ts';
import { speedOf } from './pace.ts';
import { readyNotes } from './ready-items.ts';
import { NOTHING_ANSWERED } from './start-trial-screen.ts';
import type { TrialIntent } from './TrialIntent.ts';
import type { Dialog, TrialScreenState } from './TrialScreenState.ts';

/** A crossing is announced by a slow flash for so long, µs. */
const FLASH_US = 6_000_000;

/** The run tracker reported something: marks on the chart, what is announced, what is remembered of the run. */
export function reduceRunEvent(
  state: TrialScreenState,
  event: RunEvent,
  atUs: number,
): readonly [TrialScreenState, readonly TrialIntent[]] {
  switch (event.kind) {
    case 'press-closed': {
      const runNumber = state.session?.run.runNumber ?? null;
      const again = runNumber !== null && runNumber === state.runNumber;
      const marks = placed(again ? state.marks : [], MARK_LABEL.closed, event.pressClosed.timeS);
      const sources = event.pressClosed.all.filter(({ by }) => by === 'key' || by === 'contact').length;
      const kept = withContactMarks(state, 'press-closed', sources, atUs);
      if (again) return [{ ...kept, marks, lastResult: null }, []];
      const unseen = { crossedS: null, holdDone: false, holdUnseen: false };
      const { notes: found, notPassed } = readyNotes(state, event.pressClosed.by);
      const notes = found.map(
        (text): TrialIntent => ({ kind: 'mark', mark: { kind: 'note', text }, atUs, by: 'command' }),
      );
      const dialog = givesWay(state.dialog) ? null : state.dialog;
      const takenBack = kept.takenBack?.kind === 'press-closed' ? kept.takenBack : null;
      return [
        { ...kept, ...unseen, runNumber, marks, lastResult: null, dialog, notPassed, takenBack },
        notes,
      ];
    }
    case 'crossing-provisional':
      return crossed(state, state.session?.run.provisionalCrossing?.timeS ?? null, atUs);
    case 'crossing-final':
      return crossed(state, state.session?.run.finalCrossing?.timeS ?? null, null);
    case 'contact-let-go':
      return [withNotice(state, CLOSED_AGAIN.letGo, 'quiet', atUs), []];
    case 'contact-again':
      return [
        state.dialog === null || givesWay(state.dialog)
          ? askWhatItMeans(state, 'contact', atUs)
          : withNotice(state, CLOSED_AGAIN.contactMeanwhile, 'caution', atUs),
        [],
      ];
    case 'hold-done':
      // A hold that was not seen whole is neither rung nor flashed: the bell would say that all is well.
      if (isHoldUnseen(state)) return [{ ...state, holdDone: true }, []];
      return [
        { ...state, holdDone: true, flashUntilUs: atUs + FLASH_US * speedOf(state) },
        state.holdDone ? [] : [{ kind: 'bell', why: 'hold-done' }],
      ];
    case 'opened': {
      const kept = withContactMarks(state, 'opened', 1, atUs);
      const marks = placed(state.marks, MARK_LABEL.opened, event.timeS);
      return [{ ...kept, marks, flashUntilUs: 0, dialog: withoutQuestion(state.dialog) }, []];
    }
    case 'run-finished':
      // Told again: marked as spoilt afterwards, or that mark taken back.
      if (state.lastResult?.runNumber === event.result.runNumber)
        return [{ ...state, lastResult: event.result }, []];
      return [
        {
          ...state,
          lastResult: event.result,
          crossedS: null,
          marksTaken: [],
          closedMarksUs: [],
          takenBack: null,
          spoiltReason: null,
          notPassed: null,
          runsBack: 0,
          dialog: withoutQuestion(state.dialog),
          cooling: null,
          recent: [],
          // The bell was heard once; everything else is looked at anew before each run.
          ready: {
            ...NOTHING_ANSWERED,
            confirmed: state.ready.confirmed.filter((item) => item === 'bell'),
          },
          estimate: null,
          flashUntilUs: 0,
        },
        [],
      ];
    default:
      return [state, []];
  }
}

/**
 * The run's crossing is the slowest bond-line channel's: the run state holds it once every channel has crossed.
 * `announceUs` null: a better figure for a crossing already announced.
 */
function crossed(
  state: TrialScreenState,
  timeS: number | null,
  announceUs: number | null,
): readonly [TrialScreenState, readonly TrialIntent[]] {
  if (timeS === null) return [state, []];
  const first = state.crossedS === null && announceUs !== null;
  const next = { ...state, crossedS: timeS, marks: placed(state.marks, MARK_LABEL.crossing, timeS) };
  if (!first) return [next, []];
  const closedS = state.session?.run.pressClosed?.timeS;
  if (closedS !== undefined) {
    const told = withNotice(next, SCREEN_TEXT.crossed(secondsText(timeS - closedS)), 'good', announceUs);
    return [
      { ...told, flashUntilUs: announceUs + FLASH_US * speedOf(state) },
      [{ kind: 'bell', why: 'crossing' }],
    ];
  }
  return [
    { ...next, flashUntilUs: announceUs + FLASH_US * speedOf(state) },
    [{ kind: 'bell', why: 'crossing' }],
  ];
}

/** The question about a closing is over with its run. */
function withoutQuestion(dialog: Dialog | null): Dialog | null {
  return dialog?.kind === 'closed-again' || dialog?.kind === 'undo' ? null : dialog;
}

/** Pages that only show or prepare give way to a run that begins. */
function givesWay(dialog: Dialog | null): boolean {
  return (
    dialog !== null &&
    ['ready', 'ready-reason', 'result', 'budget', 'overlay', 'runs', 'help', 'closed-again'].includes(
      dialog.kind,
    )
  );
}

function placed(marks: TrialScreenState['marks'], label: string, timeS: number): TrialScreenState['marks'] {
  return [...marks.filter((mark) => mark.label !== label), { label, timeS }];
}
