import { describe, expect, it } from 'vitest';
import { analyseWarmUp } from '../../../src/core/warm-up/analyse-warm-up.ts';
import { SHIPPED_WARM_UPS, shippedWarmUp } from './shipped-warm-up.ts';

// Truths come from the simulator's parameters and from its noise-free course, read by definitions of its own
// (src/core/simulator/warm-up-truth.ts), not from the analysis.
describe.each(SHIPPED_WARM_UPS)('%s against the truths in its head', (name) => {
  const { record, rules, truth } = shippedWarmUp(name);
  const warmUp = analyseWarmUp(record, rules);

  it.each(['upper', 'lower'])('%s platen: every figure', (side) => {
    const channel = warmUp.channels.find((one) => one.role === `${side}-platen`)!;
    const { timeConstantS, delayS } = channel.fullPower!;
    expect(Math.abs(timeConstantS!.value / truth(side, 'time-constant-s')! - 1)).toBeLessThan(0.005);
    expect(timeConstantS!.standardUncertainty).toBeLessThan(10);
    expect(Math.abs(delayS!.value - truth(side, 'delay-s')!)).toBeLessThan(3.5 * delayS!.standardUncertainty);
    expect(delayS!.standardUncertainty).toBeLessThan(0.5);
    // Heater steps of up to 0.5 °C cross the band's edge: a quarter of the 30 or 45 s cycle either way.
    expect(Math.abs(channel.settlingTimeS! - truth(side, 'settling-s')!)).toBeLessThan(8);
    const stays = truth(side, 'stays-in-band-s');
    if (stays === null) expect(channel.staysInBandS).toBeNull();
    else expect(Math.abs(channel.staysInBandS! - stays)).toBeLessThan(15);
    const { levelC, ripple } = channel.steady!;
    expect(Math.abs(levelC - truth(side, 'level-c')!)).toBeLessThan(0.06);
    expect(channel.steady!.meanOffsetC).toBeCloseTo(levelC - 232.22, 9);
    expect(Math.abs(ripple!.periodS - truth(side, 'ripple-period-s')!)).toBeLessThan(0.3);
    expect(Math.abs(ripple!.amplitudeC - truth(side, 'ripple-amplitude-c')!)).toBeLessThan(0.1);
    const overshootC = truth(side, 'overshoot-c')!;
    if (overshootC > 1) expect(Math.abs(channel.overshootC! - overshootC)).toBeLessThan(0.3);
    else expect(channel.overshootC).toBe(0);
    const [recovery] = channel.recoveries;
    expect(channel.recoveries).toHaveLength(1);
    expect(recovery!.by).toBe(name.includes('north') ? 'contact' : 'mark');
    expect(Math.abs(recovery!.depthC - truth(side, 'dip-c')!)).toBeLessThan(0.4);
    expect(Math.abs(recovery!.recoveryTimeS! - truth(side, 'recovery-s')!)).toBeLessThan(15);
    const { value, standardUncertainty } = channel.steady!.driftCPerHour;
    expect(Math.abs(value)).toBeLessThan(3.5 * standardUncertainty + 0.5);
  });

  it('power-on is the noted one; North gets ready, South’s lower platen never does', () => {
    expect(warmUp.powerOn.by).toBe('note');
    expect(
      Math.abs(warmUp.powerOn.timeS - Number(shippedWarmUp(name).head.further['truth-power-on-s'])),
    ).toBeLessThan(0.02);
    const lower = warmUp.channels.find((one) => one.role === 'lower-platen')!;
    if (name.includes('north')) {
      // Ready is inside the band to stay, plus five minutes, plus two readings of the middle of five.
      const last = Math.max(
        ...warmUp.channels.map((one) => truth(one.role.split('-')[0]!, 'stays-in-band-s')!),
      );
      expect(warmUp.readyAtS).toBeGreaterThan(300);
      expect(warmUp.readyAtS! - last - 300).toBeLessThan(15);
      expect(warmUp.readyAtS! - last - 300).toBeGreaterThan(-45);
    } else {
      expect(lower.readyAtS).toBeNull();
      expect(warmUp.readyAtS).toBeNull();
    }
    expect(warmUp.cautions).toEqual([]);
  });
});
