import type { ChannelFacts, RunFacts } from '../RunFacts.ts';
import type { RunCheck } from './RunCheck.ts';

/** Probes at rest agree within this, °C: twice the standard tolerance of new wire, ±2.2 °C by ASTM E230. */
const AGREE_AT_REST_C = 4.4;

/**
 * A bond-line channel stands off the others (or below a measured room) before closing: an extension lead reversed at both ends reads
 * wrong by twice the difference between head and reader temperature, the same at rest as when hot.
 */
export const extensionReversed: RunCheck = (facts) => {
  const roomC = facts.channels.find((one) => one.role === 'ambient')?.restC ?? null;
  for (const one of facts.bondLine) {
    if (one.restC === null || one.restC > facts.rules.targetC / 2) continue;
    const referenceC = restOfOthers(facts, one) ?? (roomC !== null && one.restC < roomC ? roomC : null);
    if (referenceC === null) continue;
    const differenceC = one.restC - referenceC;
    if (Math.abs(differenceC) <= AGREE_AT_REST_C) continue;
    return {
      code: 'extension-reversed',
      severity: 'suspect',
      facts: {
        channel: one.channel + 1,
        role: one.role,
        differenceC,
        restC: one.restC,
        referenceC,
        limitC: AGREE_AT_REST_C,
      },
    };
  }
  return null;
};

/** Rest level of the other bond-line channels; of two, the one nearer to an ordinary room (20 °C) is believed. */
function restOfOthers(facts: RunFacts, one: ChannelFacts): number | null {
  const others = facts.bondLine.filter((other) => other.channel !== one.channel && other.restC !== null);
  const nearest = others.sort((a, b) => Math.abs(a.restC! - 20) - Math.abs(b.restC! - 20))[0];
  if (nearest === undefined || Math.abs(nearest.restC! - 20) > Math.abs(one.restC! - 20)) return null;
  return nearest.restC;
}
