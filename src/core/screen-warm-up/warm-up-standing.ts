import { staleAfterS } from '../screen/stale-after-s.ts';
import type { WarmUpScreenState } from './WarmUpScreen.ts';

/** How the platens stand, in one word. Old readings are never shown as if they were now. */
export type WarmUpStanding = 'no-reader' | 'no-reading' | 'stale' | 'heating' | 'above' | 'in-band' | 'ready';

/** Readings may come once a second, s. */
const SLOWEST_INTERVAL_S = 1;

export function warmUpStanding(state: WarmUpScreenState): WarmUpStanding {
  const { link, latestUs, nowUs, speed, ready } = state;
  if (link.kind === 'lost') return 'no-reader';
  if (latestUs === null) return 'no-reading';
  if ((nowUs - latestUs) / 1e6 > staleAfterS(SLOWEST_INTERVAL_S, speed)) return 'stale';
  if (ready.ready) return 'ready';
  if (ready.platens.some((one) => one.temperatureC === null)) return 'no-reading';
  const outside = ready.platens.filter((one) => !one.inside);
  if (outside.length === 0) return 'in-band';
  return outside.every((one) => (one.temperatureC ?? 0) > one.setPointC) ? 'above' : 'heating';
}
