import type { OperatorMark } from '../reading/StreamEvent.ts';
import { strictestRule } from '../recipe/strictest-rule.ts';
import { SCREEN_TEXT } from '../text/screen-text.ts';
import { withNotice } from './notice.ts';
import { isRunOpen } from './reduce-reading.ts';
import { openReadyCheck } from './reduce-ready-key.ts';
import type { TrialIntent } from './TrialIntent.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

export type Reduced = readonly [TrialScreenState, readonly TrialIntent[]];

/** Repeats of the same mark key within this time are ignored, µs. */
const MARK_REPEAT_US = 1_000_000;

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
  if (state.setup.replay !== undefined && KEPT_OUT_OF_REPLAY.has(name))
    return [withNotice(state, SCREEN_TEXT.replayOnly, 'caution', atUs), []];
  switch (name) {
    case 'c':
    case 'space':
      return state.session?.run.pressClosed?.by === 'key' || (open && state.session?.run.phase === 'opened')
        ? [state, []]
        : mark(state, 'c', { kind: 'press-closed' }, atUs, name === 'space' ? 'pedal' : null);
    case 'o':
      return open ? mark(state, 'o', { kind: 'opened' }, atUs) : [state, []];
    case 'x':
      return open || state.lastResult !== null
        ? [{ ...state, dialog: { kind: 'spoilt', text: '' } }, []]
        : [state, []];
    case 'n':
      return [{ ...state, dialog: { kind: 'note', text: '' } }, []];
    case 'u':
      return undo(state, atUs);
    case 'f': {
      const unit = state.unit === 'F' ? 'C' : 'F';
      return [{ ...state, unit }, [{ kind: 'unit', unit }]];
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

/** Puts a mark, stamped with the moment of the key, unless the same key was taken less than 1 s ago. */
export function mark(
  state: TrialScreenState,
  key: string,
  wanted: OperatorMark & { readonly kind: 'press-closed' | 'opened' | 'spoilt' },
  atUs: number,
  by: 'pedal' | null = null,
): Reduced {
  const before = state.markKeyUs[key];
  if (before !== undefined && atUs - before < MARK_REPEAT_US) {
    return [withNotice(state, SCREEN_TEXT.repeated, 'quiet', atUs), []];
  }
  const marked = { ...state, markKeyUs: { ...state.markKeyUs, [key]: atUs }, latestMark: wanted.kind };
  return [
    withNotice(marked, SCREEN_TEXT.marked[wanted.kind], 'good', atUs),
    [{ kind: 'mark', mark: wanted, atUs, ...(by === null ? {} : { by }) }],
  ];
}

function undo(state: TrialScreenState, atUs: number): Reduced {
  const what = state.latestMark;
  if (what === null) return [withNotice(state, SCREEN_TEXT.nothingToUndo, 'quiet', atUs), []];
  const earlier = what === 'press-closed' || !isRunOpen(state) ? null : ('press-closed' as const);
  const undone = { ...state, latestMark: earlier, markKeyUs: {} };
  return [
    withNotice(undone, SCREEN_TEXT.undone[what], 'good', atUs),
    [{ kind: 'mark', mark: { kind: 'undo', what }, atUs }],
  ];
}
