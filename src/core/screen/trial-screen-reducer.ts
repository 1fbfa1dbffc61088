import { startBuckets } from '../chart/start-buckets.ts';
import type { TraceBuckets } from '../chart/TraceBuckets.ts';
import type { RunResult } from '../run/RunResult.ts';
import { neutralise } from '../text/neutralise.ts';
import { NEXT_WORD } from '../text/next-text.ts';
import { SCREEN_TEXT } from '../text/screen-text.ts';
import { bandOfRuns, runsThatCount } from './band-of-runs.ts';
import { bondLineTrouble } from './bond-line-trouble.ts';
import { classifyInput } from './classify-input.ts';
import { forgetQuestion } from './closed-again.ts';
import { finishedRun } from './finished-run.ts';
import { marksAsTheyStand } from './marks-as-they-stand.ts';
import { withLargeNotice, withNotice } from './notice.ts';
import { reduceDialog, takesText, typeInto } from './reduce-dialog.ts';
import { type Reduced, reduceKey } from './reduce-key.ts';
import { reduceReading } from './reduce-reading.ts';
import { reduceRunEvent } from './reduce-run-event.ts';
import { EMPTY_INPUT, type ScreenInput } from './ScreenInput.ts';
import { SCREEN_BUCKET_S, SCREEN_BUCKETS } from './start-trial-screen.ts';
import type { TrialIntent } from './TrialIntent.ts';
import type { TrialScreenEvent } from './TrialScreenEvent.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** The one place where the trial screen changes: state and event in, next state and wishes to the program out. */
export function trialScreenReducer(state: TrialScreenState, event: TrialScreenEvent): Reduced {
  const now = { ...state, nowUs: Math.max(state.nowUs, event.atUs) };
  switch (event.kind) {
    case 'session':
      return reduceSession(now, event);
    case 'link':
      return [watchHold({ ...now, link: event.link }), []];
    case 'store':
      return [{ ...now, store: event.store }, []];
    case 'replay-over':
      return [{ ...now, replayOver: true }, []];
    case 'standing':
      return [withBand({ ...now, standing: event.standing }), []];
    case 'earlier-runs':
      return [withBand({ ...now, finished: [...event.runs, ...now.finished] }), []];
    case 'notice':
      return [withNotice(now, event.text, event.tone, event.atUs), []];
    case 'tick':
      return reduceInput(forgetQuestion(watchHold(now), event.atUs), event);
    case 'input':
      return reduceInput(now, event.input);
  }
}

function reduceSession(
  state: TrialScreenState,
  event: Extract<TrialScreenEvent, { kind: 'session' }>,
): Reduced {
  const waiting = event.state.run.phase === 'waiting';
  const { latestReading } = event.state;
  let next: TrialScreenState = { ...watchHold(forgetQuestion(state, event.atUs)), session: event.state };
  if (latestReading !== null && latestReading !== state.latest)
    next = reduceReading(next, latestReading, event.atUs);
  const begins =
    event.events.some((e) => e.kind === 'press-closed') && state.session?.run.phase === 'waiting';
  if (begins && next.trace.bucketS > SCREEN_BUCKET_S)
    next = { ...next, trace: startBuckets(SCREEN_BUCKET_S, SCREEN_BUCKETS) };
  const intents: TrialIntent[] = [];
  for (const runEvent of event.events) {
    // The trace before this entry: with the run over, only its latest stretch is kept.
    if (runEvent.kind === 'run-finished') next = withFinished(next, state.trace, runEvent.result);
    const [after, wanted] = reduceRunEvent(next, runEvent, event.atUs);
    next = after;
    intents.push(...wanted);
  }
  if (waiting && next.lastResult === null && next.marks.length > 0)
    next = { ...next, marks: [], crossedS: null, runNumber: null };
  return [watchHold(marksAsTheyStand(next)), intents];
}

/** The finished run joins those behind the chart; one that is told again (spoilt afterwards) takes its own place. */
function withFinished(state: TrialScreenState, trace: TraceBuckets, result: RunResult): TrialScreenState {
  const { roles, recordingId = '' } = state.setup;
  const at = state.finished.findIndex(
    (run) => run.recordingId === recordingId && run.runNumber === result.runNumber,
  );
  if (at >= 0) {
    const finished = state.finished.map((run, i) =>
      i === at ? { ...run, good: result.verdict === 'good' } : run,
    );
    return withBand({ ...state, finished });
  }
  const run = finishedRun(trace, roles, result, recordingId);
  return run === null ? state : withBand({ ...state, finished: [...state.finished, run] });
}

function withBand(state: TrialScreenState): TrialScreenState {
  return { ...state, band: bandOfRuns(runsThatCount(state.finished, state.standing)) };
}

/** While the hold counts, silence or a fault leaves it unverified for good. */
function watchHold(state: TrialScreenState): TrialScreenState {
  const phase = state.session?.run.phase;
  const counting = phase === 'crossed' || phase === 'dipped';
  return counting && !state.holdUnseen && bondLineTrouble(state) !== null
    ? { ...state, holdUnseen: true }
    : state;
}

function reduceInput(state: TrialScreenState, raw: Parameters<typeof classifyInput>[1]): Reduced {
  if (takesText(state.dialog) && raw.kind === 'character') {
    return [{ ...typeInto(state, state.dialog, raw.character), input: EMPTY_INPUT }, []];
  }
  const { buffer, inputs } = classifyInput(state.input, raw);
  let next: TrialScreenState = buffer === state.input ? state : { ...state, input: buffer };
  const intents: TrialIntent[] = [];
  for (const input of inputs) {
    const [after, wanted] = reduceClassified(next, input);
    next = after;
    intents.push(...wanted);
  }
  return [next, intents];
}

function reduceClassified(state: TrialScreenState, input: ScreenInput): Reduced {
  switch (input.kind) {
    case 'key':
      return state.dialog === null
        ? reduceKey(state, input.name, input.atUs)
        : reduceDialog(state, state.dialog, input.name, input.atUs);
    case 'scan': {
      const text = neutralise(input.text);
      const own = [state.setup.assemblyName, state.setup.pressName];
      const isOwn = own.some((name) => name.toLowerCase() === text.toLowerCase());
      const told = isOwn
        ? withNotice(state, SCREEN_TEXT.scanned(text), 'good', input.atUs)
        : withNotice(
            state,
            SCREEN_TEXT.scanOther(text, neutralise(state.setup.assemblyName)),
            'caution',
            input.atUs,
          );
      return [told, [{ kind: 'scan', text, atUs: input.atUs }]];
    }
    case 'keys-together':
      return [withLargeNotice(state, SCREEN_TEXT.keysTogether, NEXT_WORD.keyAgain, input.atUs), []];
  }
}
