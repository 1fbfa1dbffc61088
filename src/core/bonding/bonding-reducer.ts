import { LIMITS } from '../run/limits.ts';
import { classifyInput } from '../screen/classify-input.ts';
import { EMPTY_INPUT } from '../screen/ScreenInput.ts';
import { BONDING_TEXT } from '../text/bonding-text.ts';
import type { BondingEvent, BondingIntent, BondingState, BondingStep } from './BondingState.ts';
import { bondLineNow, hasProbe } from './bond-line-now.ts';
import { reduceBondingInput } from './reduce-bonding-input.ts';
import { logged, reduceReadings } from './reduce-readings.ts';
import { say } from './say.ts';

/** Without a run from the readings a cycle is logged this long after opening, µs; until then it can be undone. */
const UNDO_US = LIMITS.undoS * 1e6;
/** Readings that stopped: their run never comes. Of the host's time, also in a fast simulation. */
const GIVEN_UP_US = 5e6;

/** The production timer: one event in, the next state and what is to be done out. Pure. */
export function bondingReducer(state: BondingState, event: BondingEvent): BondingStep {
  switch (event.kind) {
    case 'session':
      return reduceReadings(state, event);
    case 'link':
      return [{ ...state, link: event.link }, []];
    case 'store':
      return [{ ...state, store: event.store }, []];
    case 'notice':
      return [say(state, event.text, event.tone, event.atUs), []];
    case 'prepared':
      // The reader's clock begins here: nothing of the one before stands.
      return [
        {
          ...state,
          job: event.job,
          opening: false,
          nowUs: event.atUs,
          input: EMPTY_INPUT,
          notice: null,
        },
        [],
      ];
    case 'logged': {
      const { cycle } = event;
      const tone = cycle.result === 'done' ? 'good' : 'caution';
      const next = { ...state, logged: [...state.logged, cycle].slice(-200) };
      return [say(next, BONDING_TEXT.logged(cycle), tone, event.atUs), []];
    }
    case 'leave': {
      const [first, one] = logged(state, null, event.atUs, true);
      const [second, two] = logged(first, null, event.atUs, true);
      return [second, [...one, ...two]];
    }
    case 'tick':
      return withInputs(
        { ...state, nowUs: Math.max(state.nowUs, event.atUs) },
        { kind: 'tick', atUs: event.atUs },
      );
    case 'input':
      return withInputs({ ...state, nowUs: Math.max(state.nowUs, event.atUs) }, event.input);
  }
}

function withInputs(before: BondingState, raw: Parameters<typeof classifyInput>[1]): BondingStep {
  const { buffer, inputs } = classifyInput(before.input, raw);
  let state: BondingState = { ...before, input: buffer };
  const intents: BondingIntent[] = [];
  for (const input of inputs) {
    const [next, wishes] = reduceBondingInput(state, input);
    state = next;
    intents.push(...wishes);
  }
  const [next, wishes] = passTime(state);
  return [next, [...intents, ...wishes]];
}

/** What time alone brings: the dwell's end, a cycle to log, an old notice gone, readings that stand still. */
function passTime(before: BondingState): BondingStep {
  const { nowUs, job } = before;
  const notice = before.notice !== null && nowUs > before.notice.untilUs ? null : before.notice;
  let state: BondingState = notice === before.notice ? before : { ...before, notice };
  const intents: BondingIntent[] = [];
  const { under } = state;
  if (job !== null && under !== null && under.openedUs === null) {
    const dwellDone = (nowUs - under.closedUs) / 1e6 >= job.recipe.dwellS;
    const now = bondLineNow(state);
    const counting =
      state.session?.run.provisionalCrossing != null && state.session.run.phase !== 'hold-done';
    const unseen = under.unseen || (counting && now.kind !== 'known' && now.kind !== 'no-probe');
    if (dwellDone && !under.announced) intents.push({ kind: 'bell' });
    if (unseen !== under.unseen || dwellDone !== under.announced)
      state = { ...state, under: { ...under, unseen, announced: under.announced || dwellDone } };
  }
  const over = state.pending ?? (under?.openedUs == null ? null : under);
  const waitUs = hasProbe(state) ? UNDO_US + GIVEN_UP_US * (job?.speed ?? 1) : UNDO_US;
  if (over !== null && over.openedUs !== null && nowUs - over.openedUs > waitUs) {
    const [next, wishes] = logged(state, null, nowUs);
    return [next, [...intents, ...wishes]];
  }
  return [state, intents];
}
