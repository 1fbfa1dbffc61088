import type { LeavingIntent } from '../../core/screen-home/HomeEvent.ts';
import { trial } from '../commands/trial.ts';
import { withStore } from '../options/with-store.ts';
import type { HomeOptions } from './HomeOptions.ts';

/** Starts a trial with what was chosen, or goes on with one. */
export async function startFromHome(
  { plan, goOnWith }: Extract<LeavingIntent, { kind: 'start-trial' }>,
  options: HomeOptions,
): Promise<void> {
  const { pressName, assemblyName, reader } = plan;
  const show =
    options.show ?? (await withStore(options, (store) => (store.setting('unit') === 'C' ? 'C' : 'F')));
  await trial({
    ...options,
    show,
    speed: options.speed ?? '1',
    baud: '115200',
    ...(reader === 'simulated' ? { simulated: true } : reader === null ? {} : { port: reader }),
    ...(pressName === null ? {} : { press: pressName }),
    ...(assemblyName === null ? {} : { assembly: assemblyName }),
    ...(plan.readerUnit === null ? {} : { unit: plan.readerUnit }),
    ...(plan.ring === null ? {} : { ring: plan.ring }),
    ...(plan.coating === null ? {} : { coating: plan.coating }),
    ...(plan.probe === null ? {} : { probe: plan.probe }),
    ...(plan.initials === null ? {} : { initials: plan.initials }),
    ...(goOnWith === null ? {} : { goOn: goOnWith }),
  });
}
