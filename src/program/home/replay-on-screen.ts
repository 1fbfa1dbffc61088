import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { createPacedClock } from '../../adapters/simulated-reader/create-paced-clock.ts';
import { recordingDecoder } from '../../core/exchange/recording-decoder.ts';
import type { Reading } from '../../core/reading/StreamEvent.ts';
import type { RecordingEntry } from '../../core/recording/RecordingEntry.ts';
import type { RunEvent } from '../../core/run/RunEvent.ts';
import type { TrialScreenSetup } from '../../core/screen/TrialScreenState.ts';
import type { LeavingIntent } from '../../core/screen-home/HomeEvent.ts';
import { createSession } from '../../core/session/create-session.ts';
import type { Store } from '../../core/store/Store.ts';
import { REPLAY_TEXT } from '../../core/text/replay-text.ts';
import { trialStatistics } from '../../core/trial/trial-statistics.ts';
import { earlierRuns } from '../live/earlier-runs.ts';
import { endSignals } from '../live/end-signals.ts';
import { screenFront } from '../live/screen-front.ts';
import type { TrialFront } from '../live/TrialFront.ts';
import { withStore } from '../options/with-store.ts';
import { correctionsOf, sourceConditions } from '../sources/analyse-source.ts';
import { findTrial } from '../trials/stored-outcome.ts';
import type { HomeOptions } from './HomeOptions.ts';

/** Shown before press closed, s of the recording; what came earlier is taken at once. */
const LEAD_S = 10;
const STEP_MS = 50;

/**
 * One stored run on the trial screen, 1 to 100 times as fast: its entries go through the same pipeline, paced by their
 * arrival, and nothing is stored. True when the program is to end.
 */
export async function replayOnScreen(
  intent: Extract<LeavingIntent, { kind: 'replay' }>,
  options: HomeOptions,
): Promise<boolean> {
  return withStore(options, (store) => replay(store, intent, options));
}

async function replay(
  store: Store,
  { trialId, run, speed }: Extract<LeavingIntent, { kind: 'replay' }>,
  options: HomeOptions,
): Promise<boolean> {
  const runs = store.trialRuns(trialId);
  const chosen = runs[run];
  const recording = chosen === undefined ? undefined : store.recording(chosen.recordingId);
  if (chosen === undefined || recording === undefined) return false;
  const { head } = recording;
  const trial = findTrial(store, trialId);
  const press = store.presses().find(({ name }) => name === trial.pressName);
  const { rules, probes } = sourceConditions({ head }, {});
  const session = createSession({
    decoder: recordingDecoder(head).decoder,
    roles: head.roles,
    rules,
    probeCorrections: correctionsOf(probes),
  });
  const entries = recording.entries()[Symbol.iterator]();
  const fromS = (chosen.result.pressClosed?.timeS ?? 0) - LEAD_S;
  const untilS =
    (runs[run + 1]?.recordingId === chosen.recordingId ? chosen.result.endedS : Number.POSITIVE_INFINITY) + 2;
  let entry: RecordingEntry | undefined;
  const take = (): void => {
    const step = entries.next();
    entry = step.done === true ? undefined : step.value;
  };
  take();
  while (entry !== undefined && (session.latestReading?.timeS ?? Number.NEGATIVE_INFINITY) < fromS) {
    session.accept(entry);
    take();
  }
  const startUs = entry?.arrivedUs ?? 0;
  const host = createMonotonicClock();
  const paced = createPacedClock(host, startUs, speed);
  let over: { readonly replayUs: number; readonly hostUs: number } | null = null;
  // After the run's end the clock of the screen is that of the person before it.
  const nowUs = () => (over === null ? paced.nowUs() : over.replayUs + host.nowUs() - over.hostUs);
  const setup: TrialScreenSetup = {
    assemblyName: trial.assemblyName,
    pressName: trial.pressName,
    roles: head.roles,
    rules,
    simulated: trial.simulated,
    replay: true,
    readerName: REPLAY_TEXT.reader(run + 1),
    storePath: store.path,
    unit: options.show ?? (store.setting('unit') === 'C' ? 'C' : 'F'),
    marginS: 0,
    timerStepS: press?.timerStepS ?? 1,
    timerOffsetS: press?.timerOffsetS ?? 0,
    cautionsAcknowledged: true,
    speed,
    recordingId: chosen.recordingId,
  };
  const { controller, off } = endSignals();
  let ended = false;
  const front: TrialFront = screenFront({
    setup,
    nowUs,
    signal: controller.signal,
    ascii: options.ascii === true,
    // The screen itself takes no mark and no decision while it replays, only how fast it goes.
    onIntent: (intent) => {
      if (intent.kind !== 'replay-pace' || entry === undefined) return;
      // What is due by the old speed comes first, so that nothing looks old by the new one.
      takeDue();
      paced.setSpeed(intent.paused ? 0 : intent.speed);
    },
  });
  front.show({ kind: 'link', link: { kind: 'open' }, atUs: nowUs() });
  const stand = (count: number): void => {
    const made = runs.slice(0, count);
    const standing = { runs: made, statistics: trialStatistics(made) };
    front.show({ kind: 'standing', standing, atUs: nowUs() });
  };
  const before = runs.slice(0, run).map(({ recordingId, result }) => `${recordingId} ${result.runNumber}`);
  front.show({
    kind: 'earlier-runs',
    runs: earlierRuns(store, trialId).filter((one) => before.includes(`${one.recordingId} ${one.runNumber}`)),
    atUs: nowUs(),
  });
  stand(run);
  const tell = (events: readonly RunEvent[], atUs: number): void => {
    front.show({ kind: 'session', state: session.state, events, atUs });
    const ended = events.find((event) => event.kind === 'run-finished');
    if (ended !== undefined) stand(run + 1);
  };
  let shown: Reading | null = null;
  const takeDue = (): number => {
    const now = nowUs();
    while (entry !== undefined && entry.arrivedUs <= now) {
      const events = session.accept(entry);
      const { latestReading } = session;
      if (events.length > 0 || latestReading !== shown) tell(events, entry.arrivedUs);
      shown = latestReading;
      if ((latestReading?.timeS ?? 0) > untilS) entry = undefined;
      else take();
    }
    return now;
  };
  const pace = setInterval(() => {
    const now = takeDue();
    if (entry !== undefined) return;
    clearInterval(pace);
    over = { replayUs: now, hostUs: host.nowUs() };
    tell(session.finish(), now);
    front.show({ kind: 'replay-over', atUs: now });
    front.show({ kind: 'notice', text: REPLAY_TEXT.over, tone: 'good', atUs: now });
  }, STEP_MS);
  try {
    ended = (await front.left) === 'interrupted' || controller.signal.aborted;
  } finally {
    clearInterval(pace);
    off();
  }
  return ended;
}
