import type { RunCheck } from './RunCheck.ts';

/** Lone spikes: at least five, or three and half a per cent of the readings. Judgement, no source. */
const SPIKES = 5;
/** Ripple at least this large, °C, and two and a half times the scatter between neighbours. Judgement, no source. */
const RIPPLE_C = 1.2;

/** Spikes or ripple from heaters switching or mains on a bond-line channel. */
export const interference: RunCheck = (facts) => {
  for (const one of facts.bondLine) {
    const where = { channel: one.channel + 1, role: one.role };
    if (one.spikes >= SPIKES || (one.spikes >= 3 && one.spikeShare > 0.005))
      return { code: 'interference', severity: 'suspect', facts: { ...where, spikes: one.spikes } };
    if (one.rippleC !== null && one.rippleC > RIPPLE_C && one.rippleC > 2.5 * one.noiseC)
      return { code: 'interference', severity: 'suspect', facts: { ...where, rippleC: one.rippleC } };
  }
  return null;
};
