import { demoStorePath } from '../../adapters/files/demo-store-path.ts';
import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { DwellwrightError } from '../../core/DwellwrightError.ts';
import type { LeavingIntent } from '../../core/screen-home/HomeEvent.ts';
import type { Store } from '../../core/store/Store.ts';
import { FAILURE_TEXT } from '../../core/text/command-text.ts';
import { HOME_TEXT } from '../../core/text/home-text.ts';
import { windowClosed } from '../live/hang-up.ts';
import { waitForDisk } from '../live/wait-for-disk.ts';
import { storePath } from '../options/store-path.ts';
import { openNamedStore, withStore } from '../options/with-store.ts';
import type { HomeOptions } from './HomeOptions.ts';
import { HOME_ENTRIES } from './home-entries.ts';
import { type ShowHomeOptions, showHome } from './show-home.ts';

interface NextShown extends Pick<ShowHomeOptions, 'message' | 'trialId'> {
  readonly ended: boolean;
}

/**
 * The program from its home: shows it, does what is wanted, comes back, until it is left. A trial that was cut short by
 * Ctrl-C or a signal ends the program; the next start offers to go on with it.
 */
export async function runHome(options: HomeOptions): Promise<void> {
  const clock = createMonotonicClock();
  const controller = new AbortController();
  const end = (): void => controller.abort();
  const signals = ['SIGTERM', 'SIGHUP', 'SIGINT'] as const;
  for (const name of signals) process.on(name, end);
  process.on('SIGHUP', windowClosed);
  let next: NextShown = { message: null, trialId: null, ended: false };
  try {
    while (!next.ended && !controller.signal.aborted) {
      const store = await openNamedStore(options, waitForDisk);
      let intent: LeavingIntent;
      try {
        const message = next.message ?? (await unfinishedClosings(store));
        intent = await showHome({ ...options, ...next, message, store, clock, signal: controller.signal });
      } catch (error) {
        process.stderr.write(`${FAILURE_TEXT.dataIn(store.path)}\n`);
        throw error;
      } finally {
        store.close();
      }
      next = await follow(intent, options);
    }
  } finally {
    for (const name of signals) process.off(name, end);
    process.off('SIGHUP', windowClosed);
  }
  process.exitCode = 0;
}

/** Closings in production that a program was stopped in are logged now; said on the home. */
async function unfinishedClosings(store: Store): Promise<ShowHomeOptions['message']> {
  if (store.closings().length === 0) return null;
  const [{ logForsakenClosings }, { BONDING_TEXT }] = await Promise.all([
    import('../bonding/log-forsaken-closings.ts'),
    import('../../core/text/bonding-text.ts'),
  ]);
  const cycles = await logForsakenClosings(store);
  return cycles.length === 0 ? null : { text: BONDING_TEXT.unfinishedLogged(cycles), tone: 'caution' };
}

/** Does what was wanted; a refusal comes back as a message for the home. */
async function follow(intent: LeavingIntent, options: HomeOptions): Promise<NextShown> {
  const shown: NextShown = { message: null, trialId: null, ended: false };
  try {
    switch (intent.kind) {
      case 'quit':
        return { ...shown, ended: true };
      case 'start-trial': {
        const { startFromHome } = await import('./start-from-home.ts');
        await startFromHome(intent, options);
        return { ...shown, ended: await leftOpen(intent.goOnWith, options) };
      }
      case 'replay': {
        const { replayOnScreen } = await import('./replay-on-screen.ts');
        return { ...shown, ended: await replayOnScreen(intent, options), trialId: intent.trialId };
      }
      case 'demo': {
        const { demo } = await import('../commands/demo.ts');
        // Beside the store that the home shows, which stays as it is.
        const store = demoStorePath(storePath(options));
        await demo({ ...options, store, show: options.show ?? 'F', runs: '5' });
        const message = { text: HOME_TEXT.demoStored(store), tone: 'good' as const };
        return { ...shown, message, ended: await leftOpen(null, { ...options, store }) };
      }
      case 'entry':
        await HOME_ENTRIES.find(({ key }) => key === intent.key)?.run(options);
        return shown;
    }
  } catch (error) {
    if (!(error instanceof DwellwrightError)) throw error;
    const text = error.remedy === null ? error.message : `${error.message}. ${error.remedy}`;
    return { ...shown, message: { text, tone: 'caution' } };
  }
}

/** An open trial was not left by a person: Ctrl-C, a signal, a closed window. */
async function leftOpen(trialId: string | null, options: HomeOptions): Promise<boolean> {
  const latest = await withStore(options, (store) =>
    trialId === null ? store.trials().at(-1) : store.trials().find((trial) => trial.trialId === trialId),
  );
  return latest !== undefined && latest.closedAt === null;
}
