import { liveCureText } from '../text/cure-text.ts';
import { RUN_FACTS } from '../text/run-facts-text.ts';
import { runReasonText } from '../text/run-reasons.ts';
import { FAULT_TEXT, SCREEN_TEXT, type StateName } from '../text/screen-text.ts';
import { numberText, slopeText } from '../text/units-text.ts';
import type { ChannelFault } from '../wire/WireEvent.ts';
import { coolingLine } from './between-rows.ts';
import { bondLineTrouble } from './bond-line-trouble.ts';
import { clockText } from './clock-text.ts';
import { isMarked } from './closed-again.ts';
import { elapsedS } from './elapsed-s.ts';
import { holdDips, isHoldUnseen } from './hold-standing.ts';
import { isRunOpen } from './reduce-reading.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { ViewLine } from './TrialView.ts';

/** The lines beside the figure, most important first: how long, how long to go, what is wrong. */
export function factLines(state: TrialScreenState, name: StateName): readonly ViewLine[] {
  const lines: ViewLine[] = [];
  const say = (text: string, role: ViewLine['role'] = 'plain') => lines.push({ text, role });
  troubleLine(state, say);
  holdLine(state, name, say);
  const run = state.session?.run;
  const elapsed = elapsedS(state);
  if (elapsed !== null && run?.pressClosed)
    say(RUN_FACTS.closed(clockText(elapsed), run.pressClosed.by), 'strong');
  if (state.notPassed !== null && isRunOpen(state)) say(SCREEN_TEXT.notPassed(state.notPassed), 'caution');
  if (state.takenBack?.kind === 'press-closed' && isRunOpen(state) && !isMarked(state))
    say(SCREEN_TEXT.fromOnset, 'caution');
  switch (name) {
    case 'waiting':
      nextRunLines(state, say);
      break;
    case 'heating':
      say(estimateText(state), 'strong');
      break;
    case 'hold':
    case 'dipped':
    case 'hold-not-verified':
      say(soakText(state), 'strong');
      say(RUN_FACTS.holdSeen(run?.holdCountedS ?? 0, state.setup.rules.holdS));
      cureLine(state, say);
      break;
    case 'hold-done':
    case 'hold-done-after-dip':
      if (name === 'hold-done') say(SCREEN_TEXT.holdDone, 'good');
      say(soakText(state), 'strong');
      cureLine(state, say);
      break;
    case 'opened':
      say(SCREEN_TEXT.opened);
      break;
    case 'good':
    case 'suspect':
    case 'unusable':
    case 'spoilt':
      resultLines(state, say);
      break;
    default:
  }
  return lines;
}

/** Why the hold is not verified, or by which rule it is done: before all that follows, since room is short beside it. */
function holdLine(state: TrialScreenState, name: StateName, say: Say): void {
  const { dip, holdS } = state.setup.rules;
  const dips = holdDips(state);
  if (name === 'hold-done-after-dip') say(SCREEN_TEXT.holdDoneAfterDip(dip, dips, holdS), 'caution');
  else if (name === 'dipped') say(SCREEN_TEXT.dipped(dip), 'caution');
  if (name !== 'hold-not-verified') return;
  if (isHoldUnseen(state) && bondLineTrouble(state) === null) say(SCREEN_TEXT.holdUnseen, 'caution');
  else if (dips > 0) say(SCREEN_TEXT.holdAgain(dip, dips), 'caution');
}

/** Beside the hold, never instead of it. */
function cureLine({ session, setup }: TrialScreenState, say: Say): void {
  const equivalentS = session?.run.cureEquivalentS;
  if (equivalentS !== undefined && setup.rules.cure != null)
    say(liveCureText(equivalentS, setup.rules.cure, setup.unit));
}

type Say = (text: string, role?: ViewLine['role']) => void;

function troubleLine(state: TrialScreenState, say: Say): void {
  const trouble = bondLineTrouble(state);
  switch (trouble?.kind) {
    case 'no-reader':
      say(trouble.cause === null ? SCREEN_TEXT.noReader : SCREEN_TEXT.readerLost(trouble.cause), 'fault');
      break;
    case 'refused':
      say(trouble.detail, 'fault');
      break;
    case 'stale':
      say(SCREEN_TEXT.stale(`${numberText(trouble.ageS, 0)} s`), 'caution');
      break;
    case 'fault':
      say(FAULT_TEXT[trouble.fault as ChannelFault] ?? trouble.fault, 'fault');
      break;
    default:
  }
}

function estimateText({ estimate }: TrialScreenState): string {
  const words = RUN_FACTS.estimate;
  if (estimate === null) return words.tooEarly;
  if (estimate.kind === 'none') {
    if (estimate.why === 'levels-out-below') return words.levelsOut;
    return estimate.why === 'not-rising' ? words.notRising : words.tooEarly;
  }
  return words.about(estimate.restS, estimate.earliestS, estimate.latestS);
}

function soakText(state: TrialScreenState): string {
  const run = state.session?.run;
  const crossing = run?.finalCrossing ?? run?.provisionalCrossing ?? null;
  if (crossing === null || !run?.pressClosed) return RUN_FACTS.soakUnknown;
  const soakS = crossing.timeS - run.pressClosed.timeS;
  const rate = slopeText(crossing.slopeCPerS, state.unit).replace(/ \(.*/u, '');
  return RUN_FACTS.soak(soakS, run.finalCrossing === null, rate);
}

function resultLines(state: TrialScreenState, say: Say): void {
  const result = state.lastResult;
  if (result === null) return;
  say(RUN_FACTS.result(state.standing.runs.length, result.soakTimeS), 'strong');
  for (const reason of result.reasons) {
    say(runReasonText(reason, { unit: state.unit }), reason.severity === 'note' ? 'quiet' : 'caution');
  }
  nextRunLines(state, say);
}

/** Before the next run: how warm the carrier still is, the ready check, then the key that starts it. */
function nextRunLines(state: TrialScreenState, say: Say): void {
  const cooling = coolingLine(state);
  if (cooling !== null) say(cooling, 'caution');
  if (state.setup.readyCheck === true && !state.ready.done) say(SCREEN_TEXT.checkFirst);
  else say(state.session?.identity?.hasContact ? SCREEN_TEXT.waitingContact : SCREEN_TEXT.waitingFor);
}
