import { inhibitSleep } from '../../adapters/host/inhibit-sleep.ts';
import { createPageModel } from '../../adapters/terminal/page/PageModel.ts';
import type { RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { startWarmUpScreen } from '../../core/screen-warm-up/start-warm-up-screen.ts';
import type {
  PlatenChannel,
  WarmUpScreenEvent,
  WarmUpScreenIntent,
  WarmUpScreenState,
} from '../../core/screen-warm-up/WarmUpScreen.ts';
import { warmUpReducer } from '../../core/screen-warm-up/warm-up-reducer.ts';
import { warmUpView } from '../../core/screen-warm-up/warm-up-view.ts';
import type { SessionState } from '../../core/session/Session.ts';
import type { Store } from '../../core/store/Store.ts';
import { WARM_UP_LIVE_TEXT } from '../../core/text/warm-up-live-text.ts';
import { createReadyWatch } from '../../core/warm-up/create-ready-watch.ts';
import type { ReadyRule } from '../../core/warm-up/ReadyRule.ts';
import type { ReadyState } from '../../core/warm-up/ReadyWatch.ts';
import { plainPage } from '../bonding/plain-page.ts';
import { watchStore } from '../bonding/watch-store.ts';
import { acknowledgeCautions, cautionsAcknowledged } from '../live/cautions-of-shift.ts';
import { endSignals } from '../live/end-signals.ts';
import { type LiveTrial, startLiveTrial } from '../live/live-trial.ts';
import type { TrialReader } from '../live/TrialReader.ts';
import { runRules } from '../options/run-rules.ts';
import { refuseUnreadable } from '../sources/refuse-unreadable.ts';
import { createPlainWarmUp } from './plain-warm-up.ts';

export interface RunWarmUpLiveOptions {
  readonly store: Store;
  readonly reader: TrialReader;
  readonly head: RecordingHead;
  readonly rule: ReadyRule;
  readonly platens: readonly (PlatenChannel & { readonly label: string; readonly setPointC: number })[];
  readonly endAfterS: number | null;
  readonly endSignal: AbortSignal;
  /** Without a terminal: recorded for so long after READY, then it ends. s of the reader's clock. */
  readonly afterReadyS: number;
  /** Calls back when a simulated press switches its heaters on. */
  readonly onHeatersOn?: (listener: (atUs: number) => void) => void;
  readonly plain: boolean;
  readonly ascii: boolean;
  readonly show: 'F' | 'C';
  readonly write: (line: string) => void;
}

const LOOK_EVERY_MS = 250;
const T = WARM_UP_LIVE_TEXT;

/**
 * Records the platens from cold until it is left; without a terminal until READY. Returns how the READY watch stood. Refuses
 * a reader whose lines cannot be read without an option.
 */
export async function runWarmUpLive(options: RunWarmUpLiveOptions): Promise<ReadyState> {
  const { store, reader, head, rule, platens, plain, write } = options;
  const { clock } = reader;
  const { controller, off } = endSignals();
  if (options.endSignal.aborted) controller.abort();
  options.endSignal.addEventListener('abort', () => controller.abort(), { once: true });
  const watch = createReadyWatch({ rule, platens });
  const nowUs = () => clock.nowUs();
  const model = createPageModel<WarmUpScreenState, WarmUpScreenEvent, WarmUpScreenIntent>(
    startWarmUpScreen({
      pressName: head.pressName ?? '',
      readerName: reader.link.name,
      simulated: reader.link.simulated,
      speed: Math.max(1, reader.speed),
      rule,
      unit: options.show,
      storePath: store.path,
      channels: platens.map(({ channel, role }) => ({ channel, role })),
      ready: watch.state,
      nowUs: nowUs(),
      cautionsAcknowledged: plain || cautionsAcknowledged(store, new Date()),
    }),
    warmUpReducer,
    warmUpView,
  );
  const plainLines = createPlainWarmUp(write);
  let latestTimeS: number | null = null;
  let trouble: string | null = null;
  let live: LiveTrial | null = null;

  model.onIntent((wish) => {
    const intent = wish as WarmUpScreenIntent;
    const note = (text: string, atUs?: number) => live?.mark({ kind: 'note', text }, 'key', atUs);
    switch (intent.kind) {
      case 'heaters-on':
        return note(T.notes.heatersOn, intent.atUs);
      case 'undo-heaters-on':
        return note(T.notes.takenBack, intent.atUs);
      case 'cautions-acknowledged':
        acknowledgeCautions(store, new Date());
        return note(T.notes.cautions);
      case 'unit':
        return store.saveSetting('unit', intent.unit);
      case 'quit':
        return plain ? controller.abort() : undefined;
      case 'bell':
        return undefined;
    }
  });

  function take(state: SessionState, atUs: number): void {
    const reading = state.latestReading;
    tellCounts(state, atUs);
    if (state.refusal !== null && state.counts.readings === 0) controller.abort();
    if (reading === null || reading.timeS === latestTimeS) return;
    latestTimeS = reading.timeS;
    const values = platens.map(({ channel }) => reading.values[channel] ?? { kind: 'missing' as const });
    const ready = watch.accept(
      reading.timeS,
      values.map((value) => (value.kind === 'temperature' ? value.temperatureC : null)),
    );
    model.dispatch({ kind: 'reading', ready, values, atUs });
    if (!plain) return;
    plainLines.look(model.getState());
    if (ready.firstReadyAtS !== null && reading.timeS - ready.firstReadyAtS >= options.afterReadyS)
      controller.abort();
  }

  function tellCounts({ counts }: SessionState, atUs: number): void {
    const { garbage, badChecksum, malformed, overLong, cutOff, lostSamples, lines, readings, gaps } = counts;
    const lost = garbage + badChecksum + malformed + overLong + cutOff + lostSamples;
    model.dispatch({ kind: 'counts', counts: { lines, readings, lost, gaps }, atUs });
  }

  const timer =
    options.endAfterS === null ? undefined : setTimeout(() => controller.abort(), options.endAfterS * 1000);
  const lookTimer = plain ? setInterval(() => plainLines.look(model.getState()), LOOK_EVERY_MS) : undefined;
  const unwatch = watchStore(
    store,
    () => trouble,
    (status) => model.dispatch({ kind: 'store', store: status, atUs: nowUs() }),
  );
  const letSleep = reader.link.simulated ? () => undefined : inhibitSleep();
  try {
    write(T.recording(head.recordingId));
    live = await startLiveTrial({
      store,
      link: reader.link,
      clock,
      head,
      rules: runRules({}, { platenSetPointC: head.platenSetPointC }),
      speed: reader.speed,
      watchSleep: reader.watchSleep,
      tell(event) {
        if (event.kind === 'link') {
          model.dispatch(event);
          if (plain) plainLines.look(model.getState());
        } else if (event.kind === 'notice') {
          model.dispatch({ kind: 'notice', text: event.text, atUs: event.atUs });
          write(event.text);
        } else if (event.kind === 'session') take(event.state, event.atUs);
      },
      onCommit(error) {
        trouble = error === null ? null : error instanceof Error ? error.message : String(error);
      },
    });
    options.onHeatersOn?.((atUs) => {
      model.dispatch({ kind: 'heaters-on', atUs });
      write(T.simulatedHeaters);
    });
    await (plain
      ? plainPage(model, nowUs, controller.signal)
      : (await import('../../adapters/terminal/page/run-page.tsx')).runPage({
          model,
          nowUs,
          ascii: options.ascii,
          colour: !process.env.NO_COLOR,
          signal: controller.signal,
        }));
  } finally {
    clearTimeout(timer);
    clearInterval(lookTimer);
    unwatch();
    letSleep();
    await live?.stop();
    off();
  }
  if (live !== null) refuseUnreadable(reader.link.name, live.state);
  return watch.state;
}
