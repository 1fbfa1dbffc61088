import { createPageModel } from '../../adapters/terminal/page/PageModel.ts';
import type { RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { EMPTY_INPUT } from '../../core/screen/ScreenInput.ts';
import type {
  WarmUpScreenEvent,
  WarmUpScreenIntent,
  WarmUpScreenState,
} from '../../core/screen-warm-up/WarmUpScreen.ts';
import { warmUpReducer } from '../../core/screen-warm-up/warm-up-reducer.ts';
import { warmUpStanding } from '../../core/screen-warm-up/warm-up-standing.ts';
import { warmUpView } from '../../core/screen-warm-up/warm-up-view.ts';
import type { Store } from '../../core/store/Store.ts';
import { WARM_UP_LIVE_TEXT } from '../../core/text/warm-up-live-text.ts';
import { readyStateLines } from '../../core/text/warm-up-text.ts';
import { createReadyWatch } from '../../core/warm-up/create-ready-watch.ts';
import type { ReadyRule } from '../../core/warm-up/ReadyRule.ts';
import type { ReadyState } from '../../core/warm-up/ReadyWatch.ts';
import { plainPage } from '../bonding/plain-page.ts';
import { watchStore } from '../bonding/watch-store.ts';
import { endSignals } from '../live/end-signals.ts';
import { type LiveTrial, startLiveTrial } from '../live/live-trial.ts';
import type { TrialReader } from '../live/TrialReader.ts';
import { runRules } from '../options/run-rules.ts';

export interface RunWarmUpLiveOptions {
  readonly store: Store;
  readonly reader: TrialReader;
  readonly head: RecordingHead;
  readonly rule: ReadyRule;
  readonly platens: readonly {
    readonly channel: number;
    readonly label: string;
    readonly setPointC: number;
  }[];
  readonly endAfterS: number | null;
  readonly endSignal: AbortSignal;
  readonly plain: boolean;
  readonly ascii: boolean;
  readonly show: 'F' | 'C';
  readonly write: (line: string) => void;
}

/** Without a terminal: recorded for so long after READY, then it ends; a line is printed so often. s of the reader's clock. */
const AFTER_READY_S = 30;
const SAY_EVERY_S = 60;

/** Records the platens from cold until it is left; without a terminal until READY. Returns how the READY watch stood. */
export async function runWarmUpLive(options: RunWarmUpLiveOptions): Promise<ReadyState> {
  const { store, reader, head, rule, platens, plain, write } = options;
  const { clock } = reader;
  const { controller, off } = endSignals();
  if (options.endSignal.aborted) controller.abort();
  options.endSignal.addEventListener('abort', () => controller.abort(), { once: true });
  const watch = createReadyWatch({ rule, platens });
  const nowUs = () => clock.nowUs();
  const model = createPageModel<WarmUpScreenState, WarmUpScreenEvent, WarmUpScreenIntent>(
    {
      pressName: head.pressName ?? '',
      readerName: reader.link.name,
      simulated: reader.link.simulated,
      speed: reader.speed,
      rule,
      unit: options.show,
      storePath: store.path,
      ready: watch.state,
      latestUs: null,
      nowUs: nowUs(),
      link: { kind: 'opening' },
      store: null,
      rung: false,
      input: EMPTY_INPUT,
    },
    warmUpReducer,
    warmUpView,
  );
  let latestTimeS: number | null = null;
  let saidAtS: number | null = null;
  let saidStanding = '';
  let trouble: string | null = null;

  function say(state: ReadyState): void {
    const standing = warmUpStanding(model.getState());
    const timeS = state.timeS ?? 0;
    if (standing === saidStanding && saidAtS !== null && timeS - saidAtS < SAY_EVERY_S) return;
    saidStanding = standing;
    saidAtS = timeS;
    const at = `${Math.floor(timeS / 60)}:${String(Math.floor(timeS % 60)).padStart(2, '0')} min`;
    write(
      `${at}: ${WARM_UP_LIVE_TEXT.state[standing]}. ${readyStateLines(state, rule.forS, options.show).join(' ')}`,
    );
  }

  model.onIntent(({ kind }) => {
    if (kind === 'quit' && plain) controller.abort();
  });
  const timer =
    options.endAfterS === null ? undefined : setTimeout(() => controller.abort(), options.endAfterS * 1000);
  let live: LiveTrial | null = null;
  const unwatch = watchStore(
    store,
    () => trouble,
    (status) => model.dispatch({ kind: 'store', store: status, atUs: nowUs() }),
  );
  try {
    write(WARM_UP_LIVE_TEXT.recording(head.recordingId));
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
          if (event.link.kind === 'lost') write(WARM_UP_LIVE_TEXT.lost);
        }
        if (event.kind === 'notice') write(event.text);
        if (event.kind !== 'session') return;
        const reading = event.state.latestReading;
        if (reading === null || reading.timeS === latestTimeS) return;
        latestTimeS = reading.timeS;
        const ready = watch.accept(
          reading.timeS,
          platens.map(({ channel }) => {
            const value = reading.values[channel];
            return value?.kind === 'temperature' ? value.temperatureC : null;
          }),
        );
        model.dispatch({ kind: 'reading', ready, atUs: event.atUs });
        say(ready);
        if (plain && ready.firstReadyAtS !== null && reading.timeS - ready.firstReadyAtS >= AFTER_READY_S)
          controller.abort();
      },
      onCommit(error) {
        trouble = error === null ? null : error instanceof Error ? error.message : String(error);
      },
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
    unwatch();
    await live?.stop();
    off();
  }
  return watch.state;
}
