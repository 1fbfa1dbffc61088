import type { HomeOptions } from '../home/HomeOptions.ts';
import { rememberedPlan } from '../home/remembered-plan.ts';
import { withStore } from '../options/with-store.ts';
import { warmUpLive } from './warm-up-live.ts';

/** The live warm-up with the press and reader that the next trial would use. */
export async function warmUpFromHome(options: HomeOptions): Promise<void> {
  const { plan, presses, unit } = await withStore(options, (store) => ({
    plan: rememberedPlan(store),
    presses: store.presses(),
    unit: store.setting('unit'),
  }));
  const press = plan.pressName ?? (presses.length === 1 ? presses[0]?.name : undefined);
  const { reader, readerUnit } = plan;
  await warmUpLive({
    ...options,
    show: options.show ?? (unit === 'C' ? 'C' : 'F'),
    ...(press === undefined ? {} : { press }),
    ...(reader === 'simulated' ? { simulated: true } : reader === null ? {} : { port: reader }),
    ...(readerUnit === null ? {} : { unit: readerUnit }),
  });
}
