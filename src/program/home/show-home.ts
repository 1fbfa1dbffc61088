import { statfs } from 'node:fs/promises';
import { dirname } from 'node:path';
import { createHomeModel, runHomeScreen } from '../../adapters/terminal/home/index.ts';
import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';
import type { HomeIntent, LeavingIntent } from '../../core/screen-home/HomeEvent.ts';
import type { PortFacts } from '../../core/screen-home/HomeFacts.ts';
import type { HomePage } from '../../core/screen-home/HomeState.ts';
import { startHome } from '../../core/screen-home/start-home.ts';
import { startRecords } from '../../core/screen-records/reduce-records.ts';
import type { Store } from '../../core/store/Store.ts';
import type { HomeOptions } from './HomeOptions.ts';
import { loadFacts } from './load-facts.ts';
import { obeyHome } from './obey-home.ts';
import { rememberedPlan } from './remembered-plan.ts';
import { watchPorts } from './watch-ports.ts';

export interface ShowHomeOptions extends Omit<HomeOptions, 'store'> {
  readonly store: Store;
  readonly clock: MonotonicClock;
  readonly signal: AbortSignal;
  /** Shown at once, such as why a trial could not start. */
  readonly message: { readonly text: string; readonly tone: 'caution' | 'good' } | null;
  /** Trial whose record is shown first; null: the home. */
  readonly trialId: string | null;
}

const DISK_EVERY_MS = 10_000;

/** Shows home, set-up and records until something else is wanted. */
export async function showHome(options: ShowHomeOptions): Promise<LeavingIntent> {
  const { store, clock, signal, message, trialId } = options;
  const nowUs = () => clock.nowUs();
  let ports: readonly PortFacts[] | null = null;
  let freeBytes: number | null = null;
  let allTrials = trialId !== null;
  const facts = () => loadFacts(store, { ports, freeBytes, allTrials });
  const first = facts();
  const records = trialId === null ? null : startRecords(first, trialId);
  const page: HomePage =
    records?.state == null ? { kind: 'home' } : { kind: 'records', records: records.state };
  const unit = options.show ?? (store.setting('unit') === 'C' ? 'C' : 'F');
  const model = createHomeModel(startHome(first, rememberedPlan(store), unit, nowUs(), page));
  if (message !== null) model.dispatch({ kind: 'notice', ...message, atUs: nowUs() });
  const refresh = (all = allTrials): void => {
    allTrials = all;
    model.dispatch({ kind: 'facts', facts: facts(), atUs: nowUs() });
  };
  const obeying = { store, dispatch: model.dispatch, nowUs, refresh };
  let failed: (error: unknown) => void = () => {};
  const failure = new Promise<never>((_resolve, reject) => {
    failed = reject;
  });
  // One wish after the other: a reason typed is on disk before the trial is read again.
  let wishes: Promise<void> = Promise.resolve();
  const obey = (intent: HomeIntent): void => {
    wishes = wishes.then(() => obeyHome(intent, obeying)).catch(failed);
  };
  for (const intent of records?.intents ?? []) obey(intent);
  const patch = (change: Partial<ReturnType<typeof facts>>): void =>
    model.dispatch({ kind: 'facts', facts: { ...model.getState().facts, ...change }, atUs: nowUs() });
  const usedLast = (): string | null => {
    const { reader } = model.getState().plan;
    return reader === 'simulated' ? null : reader;
  };
  const watch = watchPorts((found) => {
    ports = found;
    patch({ ports });
  }, usedLast);
  const lookAtDisk = async (): Promise<void> => {
    freeBytes = await statfs(dirname(store.path)).then(
      ({ bavail, bsize }) => bavail * bsize,
      () => null,
    );
    patch({ freeBytes });
  };
  void lookAtDisk();
  const disk = setInterval(() => void lookAtDisk(), DISK_EVERY_MS);
  try {
    const screen = runHomeScreen({
      model,
      nowUs,
      signal,
      ascii: options.ascii === true,
      colour: !process.env.NO_COLOR,
      onIntent: obey,
      failure,
    });
    const leaving = await screen;
    await wishes;
    return leaving;
  } finally {
    watch.stop();
    clearInterval(disk);
  }
}
