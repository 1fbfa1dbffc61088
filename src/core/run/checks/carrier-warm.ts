import type { RunCheck } from './RunCheck.ts';

/** Room temperature where neither a channel nor a rule tells it, °C. Common practice, no source. */
const USUAL_ROOM_C = 25;

/**
 * Start temperature more than `warmCarrierLimitC` above the room's (an ambient channel, else the rules, else 25 °C):
 * the soak time comes out short, about 0.2 s per °C on the trade's example.
 */
export const carrierWarm: RunCheck = ({ startC, rules, startedAbove, channels }) => {
  const measuredC = channels.find((one) => one.role === 'ambient')?.restC ?? null;
  const ambientC = measuredC ?? rules.ambientC ?? USUAL_ROOM_C;
  if (startC === null || startedAbove || startC >= rules.targetC) return null;
  if (startC <= ambientC + rules.warmCarrierLimitC) return null;
  return {
    code: 'carrier-warm',
    severity: 'suspect',
    facts: { startC, ambientC, limitC: rules.warmCarrierLimitC },
  };
};
