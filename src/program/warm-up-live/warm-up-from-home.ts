import { WARM_UP_LIVE_TEXT } from '../../core/text/warm-up-live-text.ts';
import type { HomeOptions } from '../home/HomeOptions.ts';
import { rememberedPlan } from '../home/remembered-plan.ts';
import { OptionError } from '../options/OptionError.ts';
import { withStore } from '../options/with-store.ts';
import { warmUpLive } from './warm-up-live.ts';

/** The live warm-up with the press and reader that the next trial would use. */
export async function warmUpFromHome(options: HomeOptions): Promise<void> {
  const { plan, presses, unit } = await withStore(options, (store) => ({
    plan: rememberedPlan(store),
    presses: store.presses(),
    unit: store.setting('unit'),
  }));
  // The home has its own ways to a reader and a press; options of a command are no help there.
  if (plan.reader === null)
    throw new OptionError(WARM_UP_LIVE_TEXT.homeNoReader, WARM_UP_LIVE_TEXT.homeSetUp, 'reader-not-named');
  const press = plan.pressName ?? (presses.length === 1 ? presses[0]?.name : undefined);
  if (press === undefined)
    throw new OptionError(WARM_UP_LIVE_TEXT.homeNoPress, WARM_UP_LIVE_TEXT.homeChoose, 'press-not-named');
  const { reader, readerUnit } = plan;
  await warmUpLive({
    ...options,
    show: options.show ?? (unit === 'C' ? 'C' : 'F'),
    press,
    ...(reader === 'simulated' ? { simulated: true } : { port: reader }),
    ...(readerUnit === null ? {} : { unit: readerUnit }),
  });
}
