import type { ReadyFacts, ReadyFinding } from './ReadyCheck.ts';

/** The carrier is back at the room's temperature: a warm one reaches the target early and says nothing of a cold one. */
export function checkCarrier({ cooling }: ReadyFacts): ReadyFinding {
  if (cooling === null) return { state: 'wait', code: 'carrier-awaited', facts: {} };
  const { temperatureC } = cooling;
  if (cooling.kind === 'cool') return { state: 'ready', code: 'carrier-cool', facts: { temperatureC } };
  const wait = cooling.wait === null ? {} : { waitS: cooling.wait.waitS };
  return {
    state: 'not-ready',
    code: 'carrier-warm',
    facts: { temperatureC, limitC: cooling.limitC, ...wait },
  };
}
