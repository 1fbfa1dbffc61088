import { isDemoStore } from '../../adapters/files/demo-store-path.ts';
import { bond } from '../commands/bond.ts';
import type { HomeOptions } from '../home/HomeOptions.ts';
import { rememberedPlan } from '../home/remembered-plan.ts';
import { storePath } from '../options/store-path.ts';
import { withStore } from '../options/with-store.ts';

/** The production timer with the reader that the next trial would use; without one, the time alone (in the demo's own store as a trial of it). */
export async function bondFromHome(options: HomeOptions): Promise<void> {
  const { plan, unit } = await withStore(options, (store) => ({
    plan: rememberedPlan(store),
    unit: store.setting('unit'),
  }));
  const { reader, readerUnit, initials } = plan;
  await bond({
    ...options,
    show: options.show ?? (unit === 'C' ? 'C' : 'F'),
    ...(reader === null
      ? { reader: false, ...(isDemoStore(storePath(options)) ? { simulated: true } : {}) }
      : reader === 'simulated'
        ? { simulated: true }
        : { port: reader }),
    ...(readerUnit === null ? {} : { unit: readerUnit }),
    ...(initials === null ? {} : { initials }),
  });
}
