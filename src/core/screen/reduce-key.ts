import { strictestRule } from '../recipe/strictest-rule.ts';
import { SCREEN_TEXT } from '../text/screen-text.ts';
import { reduceClosedKey } from './closed-again.ts';
import { markTaken } from './mark-taken.ts';
import { withNotice } from './notice.ts';
import { reducePaceKey } from './pace.ts';
import { isRunOpen } from './reduce-reading.ts';
import { openReadyCheck } from './reduce-ready-key.ts';
import { scrollsRuns } from './runs-table.ts';
import type { TrialIntent } from './TrialIntent.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import { putMarkBack, reduceUndoKey } from './undo-mark.ts';

export type Reduced = readonly [TrialScreenState, readonly TrialIntent[]];

/** Keys that would mark or decide something: a stored run shown again takes none of them. */
const KEPT_OUT_OF_REPLAY: ReadonlySet<string> = new Set([
  'c',
  'space',
  'o',
  'x',
  'n',
  'u',
  'r',
  'a',
  'k',
  'd',
  'v',
]);

/** A single key while no question is open. Keys that mean nothing now do nothing. */
export function reduceKey(state: TrialScreenState, name: string, atUs: number): Reduced {
  const open = isRunOpen(state);
  const paced = reducePaceKey(state, name);
  if (paced !== null) return paced;
  if (state.setup.replay === true && KEPT_OUT_OF_REPLAY.has(name))
    return [withNotice(state, SCREEN_TEXT.replayOnly, 'caution', atUs), []];
  switch (name) {
    case 'c':
    case 'space':
      return reduceClosedKey(state, name, atUs);
    case 'o':
      return open && state.session?.run.phase !== 'opened'
        ? markTaken(state, 'o', { kind: 'opened' }, atUs)
        : [state, []];
    case 'x':
      return open || state.lastResult !== null
        ? [{ ...state, dialog: { kind: 'spoilt', text: '' } }, []]
        : [state, []];
    case 'n':
      return [{ ...state, dialog: { kind: 'note', text: '' } }, []];
    case 'u':
      return reduceUndoKey(state, atUs);
    case 'p':
      return putMarkBack(state, atUs);
    case 'w':
      return open && state.notPassed !== null
        ? [{ ...state, dialog: { kind: 'not-passed', text: '' } }, []]
        : [state, []];
    case 'f': {
      const unit = state.unit === 'F' ? 'C' : 'F';
      return [{ ...state, unit }, [{ kind: 'unit', unit }]];
    }
    case 'up':
    case 'down': {
      if (open || !scrollsRuns(state)) return [state, []];
      const most = Math.max(0, state.standing.runs.length - 1);
      const runsBack = Math.min(most, Math.max(0, state.runsBack + (name === 'up' ? 1 : -1)));
      return [{ ...state, runsBack }, []];
    }
    case 'r':
      return !open && state.standing.runs.length > 0
        ? [{ ...state, dialog: { kind: 'runs', selected: state.standing.runs.length - 1 } }, []]
        : [state, []];
    case 'a': {
      if (open) return [state, []];
      const { statistics } = state.standing;
      if (statistics === null || statistics.runs === 0) {
        return [withNotice(state, SCREEN_TEXT.nothingCounts, 'caution', atUs), []];
      }
      return [{ ...state, dialog: { kind: 'accept-rule', rule: strictestRule(statistics) } }, []];
    }
    case 'k':
      return open || state.setup.readyCheck !== true ? [state, []] : openReadyCheck(state);
    case 'd':
      return open || (state.standing.statistics?.runs ?? 0) === 0
        ? [state, []]
        : [{ ...state, dialog: { kind: 'result' } }, []];
    case 'v':
      return open || state.finished.length === 0
        ? [state, []]
        : [{ ...state, dialog: { kind: 'overlay' } }, []];
    case 'h':
      return [{ ...state, dialog: { kind: 'help' } }, []];
    case 'q':
      return [{ ...state, dialog: { kind: 'quit' } }, []];
    default:
      return [state, []];
  }
}
