import { bond } from '../commands/bond.ts';
import type { HomeOptions } from '../home/HomeOptions.ts';
import { rememberedPlan } from '../home/remembered-plan.ts';
import { withStore } from '../options/with-store.ts';

/** The production timer with the reader that the next trial would use; without one, the time alone. */
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
      ? { reader: false }
      : reader === 'simulated'
        ? { simulated: true }
        : { port: reader }),
    ...(readerUnit === null ? {} : { unit: readerUnit }),
    ...(initials === null ? {} : { initials }),
  });
}
