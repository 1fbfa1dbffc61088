import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { createPageModel } from '../../adapters/terminal/page/PageModel.ts';
import type { BondingCycle, CycleFacts } from '../../core/bonding/BondingCycle.ts';
import type { BondingEvent, BondingIntent, BondingState } from '../../core/bonding/BondingState.ts';
import { bondingReducer } from '../../core/bonding/bonding-reducer.ts';
import { startBonding } from '../../core/bonding/start-bonding.ts';
import type { Probe } from '../../core/probe/Probe.ts';
import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { ChannelRole } from '../../core/recording/RecordingEntry.ts';
import { bondingView } from '../../core/screen-bonding/bonding-view.ts';
import type { Store } from '../../core/store/Store.ts';
import { BONDING_TEXT } from '../../core/text/bonding-text.ts';
import { endSignals } from '../live/end-signals.ts';
import { type LiveTrial, startLiveTrial } from '../live/live-trial.ts';
import type { TrialReader } from '../live/TrialReader.ts';
import { bondingHead } from './bonding-head.ts';
import { createCycleLog } from './create-cycle-log.ts';
import { plainPage } from './plain-page.ts';
import { prepareJob } from './prepare-job.ts';
import { watchStore } from './watch-store.ts';

export interface RunBondingOptions {
  readonly store: Store;
  readonly choices: readonly Recipe[];
  /** Taken at once; null: chosen on the screen. */
  readonly recipe: Recipe | null;
  /** Null without a reader. */
  readonly openReader: ((recipe: Recipe) => Promise<TrialReader>) | null;
  readonly roles: (recipe: Recipe) => readonly ChannelRole[];
  /** Probe on each channel, channel 1 first; null where not known. */
  readonly probes: (recipe: Recipe, channels: number) => readonly (Probe | null)[];
  readonly platenBandC: number;
  readonly bandToleranceC: number;
  /** Only tried: what is logged is marked as simulated, also without a reader. */
  readonly simulated: boolean;
  readonly initials: string | null;
  readonly portPath: string | null;
  readonly statedUnit: 'C' | 'F' | 'K' | null;
  readonly endAfterCycles: number | null;
  readonly endAfterS: number | null;
  /** Ends when aborted from outside (end of a simulation). */
  readonly endSignal: AbortSignal;
  readonly plain: boolean;
  readonly ascii: boolean;
  readonly show: 'F' | 'C';
  /** Told at the start. */
  readonly message: string | null;
  /** Plain lines of what happens. */
  readonly write: (line: string) => void;
}

const CAUTIONS_SETTING = 'cautions-acknowledged';
const SHIFT_MS = 8 * 3600 * 1000;

/** The production timer to its end. Returns the cycles it logged; each is in the store. */
export async function runBonding(options: RunBondingOptions): Promise<readonly BondingCycle[]> {
  const { store, openReader, plain, write } = options;
  const { controller, off } = endSignals();
  options.endSignal.addEventListener('abort', () => controller.abort(), { once: true });
  const timer =
    options.endAfterS === null ? undefined : setTimeout(() => controller.abort(), options.endAfterS * 1000);
  let clock: MonotonicClock = createMonotonicClock();
  const nowUs = () => clock.nowUs();
  const pageModel = createPageModel<BondingState, BondingEvent, BondingIntent>(
    startBonding({
      choices: options.choices,
      cautionsAcknowledged: plain || acknowledged(store),
      unit: options.show,
      storePath: store.path,
      nowUs: nowUs(),
    }),
    bondingReducer,
    bondingView,
  );
  const cycles: BondingCycle[] = [];
  let recordingId: string | null = null;
  const cycleLog = createCycleLog({
    store,
    nowUs,
    initials: options.initials,
    recordingId: () => recordingId,
  });
  const model: typeof pageModel = {
    ...pageModel,
    dispatch(event) {
      pageModel.dispatch(event);
      cycleLog.keep(pageModel.getState());
    },
  };
  let live: LiveTrial | null = null;
  let reader: TrialReader | null = null;
  let trouble: string | null = null;
  let failed: (error: unknown) => void = () => {};
  const failure = new Promise<never>((_resolve, reject) => {
    failed = reject;
  });
  failure.catch(() => controller.abort());

  function tellMessage(): void {
    if (options.message !== null)
      model.dispatch({ kind: 'notice', text: options.message, tone: 'caution', atUs: nowUs() });
  }

  async function prepare(recipe: Recipe): Promise<void> {
    reader = (await openReader?.(recipe)) ?? null;
    const roles = reader === null ? null : options.roles(recipe);
    const job = prepareJob(store, recipe, {
      platenBandC: options.platenBandC,
      bandToleranceC: options.bandToleranceC,
      roles,
      readerName: reader?.link.name ?? null,
      // The page marks a simulated recipe as such by itself.
      simulated: reader?.link.simulated ?? (options.simulated && !recipe.simulated),
      speed: Math.max(1, reader?.speed ?? 1),
    });
    if (reader !== null) clock = reader.clock;
    model.dispatch({ kind: 'prepared', job, atUs: nowUs() });
    if (job.gaugeRemark != null) write(job.gaugeRemark);
    tellMessage();
    if (reader === null || roles === null) return ready(recipe);
    const { head, rules } = bondingHead({
      job,
      roles,
      probes: options.probes(recipe, roles.length),
      initials: options.initials,
      portPath: options.portPath,
      statedUnit: options.statedUnit,
    });
    recordingId = head.recordingId;
    live = await startLiveTrial({
      store,
      link: reader.link,
      clock: reader.clock,
      head,
      rules,
      speed: reader.speed,
      watchSleep: reader.watchSleep,
      tell: (event) => {
        if (event.kind === 'session' || event.kind === 'link') model.dispatch(event);
      },
      onCommit: (error) => {
        trouble = error === null ? null : error instanceof Error ? error.message : String(error);
      },
    });
    ready(recipe);
  }

  function ready({ assemblyName, pressName, dwellS }: Recipe): void {
    write(BONDING_TEXT.plainReady(assemblyName, pressName, dwellS));
  }

  function log(facts: CycleFacts): void {
    const cycle = cycleLog.log(model.getState(), facts);
    cycles.push(cycle);
    write(BONDING_TEXT.logged(cycle));
    model.dispatch({ kind: 'logged', cycle, atUs: nowUs() });
    if (options.endAfterCycles !== null && cycles.length >= options.endAfterCycles) controller.abort();
  }

  model.onIntent((wish) => {
    const intent = wish as BondingIntent;
    if (intent.kind === 'recipe-chosen') prepare(intent.recipe).catch(failed);
    else if (intent.kind === 'cautions-acknowledged')
      store.saveSetting(CAUTIONS_SETTING, new Date().toISOString());
    else if (intent.kind === 'unit') store.saveSetting('unit', intent.unit);
    else if (intent.kind === 'mark') {
      write(intent.what === 'press-closed' ? BONDING_TEXT.plainClosed : BONDING_TEXT.plainOpened);
      live?.mark({ kind: intent.what }, intent.by, intent.atUs);
      if (intent.what === 'press-closed') reader?.hand?.closePress();
      else reader?.hand?.openPress();
    } else if (intent.kind === 'undo') live?.mark({ kind: 'undo', what: intent.what }, 'key', intent.atUs);
    else if (intent.kind === 'log-cycle') log(intent.facts);
    else if (intent.kind === 'bell') write(BONDING_TEXT.plainDone);
    else if (intent.kind === 'quit' && plain) controller.abort();
  });
  const unwatch = watchStore(
    store,
    () => trouble ?? cycleLog.trouble,
    (status) => model.dispatch({ kind: 'store', store: status, atUs: nowUs() }),
  );
  if (options.message !== null) write(options.message);
  tellMessage();
  try {
    if (options.recipe !== null) await prepare(options.recipe);
    const page = plain
      ? plainPage(model, nowUs, controller.signal)
      : import('../../adapters/terminal/page/run-page.tsx').then(({ runPage }) =>
          runPage({
            model,
            nowUs,
            ascii: options.ascii,
            colour: !process.env.NO_COLOR,
            signal: controller.signal,
          }),
        );
    await Promise.race([page, failure]);
  } finally {
    clearTimeout(timer);
    unwatch();
    // Finishes the run of a cycle that was opened a moment ago, so that its hold is in what is logged.
    await (live as LiveTrial | null)?.stop();
    model.dispatch({ kind: 'leave', atUs: nowUs() });
    off();
    cycleLog.close();
  }
  return cycles;
}

function acknowledged(store: Store): boolean {
  const before = store.setting(CAUTIONS_SETTING);
  return before !== undefined && Date.now() - Date.parse(before) < SHIFT_MS;
}
