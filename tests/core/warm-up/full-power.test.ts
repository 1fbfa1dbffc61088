import { describe, expect, it } from 'vitest';
import { onlyChannel, recordOf, rulesWith } from './second-order.ts';

// Closed form: T = start + A·(1 − exp(−(t − d)/τ)) until the controller throttles; then held at the set point.
const firstOrder =
  (tauS: number, delayS: number, endC: number, setPointC: number) =>
  (timeS: number): number => {
    const since = timeS - 60 - delayS;
    const free = since <= 0 ? 24 : 24 + (endC - 24) * -Math.expm1(-since / tauS);
    return Math.min(setPointC, free);
  };

describe('time constant and delay', () => {
  it.each([
    [2500, 15, 570],
    [900, 40, 320],
    [300, 5, 260],
  ])(
    'τ %i s, delay %i s without noise: to 0.2 %% and 0.1 s, on the full-power stretch alone',
    (tauS, delayS, endC) => {
      const setPointC = 232;
      const curve = firstOrder(tauS, delayS, endC, setPointC);
      const { channel } = onlyChannel(
        recordOf(curve, { endS: 3600, intervalS: 1 }),
        rulesWith(setPointC),
        60,
      );
      expect(channel.fullPower!.timeConstantS!.value / tauS).toBeCloseTo(1, 2);
      expect(Math.abs(channel.fullPower!.timeConstantS!.value / tauS - 1)).toBeLessThan(0.002);
      expect(channel.fullPower!.delayS!.value).toBeCloseTo(delayS, 0);
      expect(Math.abs(channel.fullPower!.delayS!.value - delayS)).toBeLessThan(0.1);
      const throttleS = delayS - tauS * Math.log(1 - (setPointC - 24) / (endC - 24));
      expect(channel.fullPower!.toS).toBeLessThanOrEqual(throttleS);
      expect(channel.fullPower!.firstRateCPerS.value).toBeCloseTo((endC - 24) / tauS, 3);
    },
  );

  it('two lags in a row look like the delay τ₁·ln(τ₁/(τ₁ − τ₂)) once the quick one has died away', () => {
    const [slow, fast] = [2500, 25];
    const free = (since: number) =>
      since <= 0 ? 0 : 1 - (slow * Math.exp(-since / slow) - fast * Math.exp(-since / fast)) / (slow - fast);
    const { channel } = onlyChannel(
      recordOf((timeS) => Math.min(232, 24 + 546 * free(timeS - 60)), { endS: 3600, intervalS: 1 }),
      rulesWith(232),
      60,
    );
    expect(channel.fullPower!.delayS!.value).toBeCloseTo(slow * Math.log(slow / (slow - fast)), 0);
    expect(channel.fullPower!.timeConstantS!.value / slow).toBeCloseTo(1, 2);
  });

  it('stated uncertainties hold: of 200 noisy warm-ups 95 % lie within 1.96 of them (90 % to 99 %)', () => {
    let tauInside = 0;
    let delayInside = 0;
    const seeds = 200;
    const curve = firstOrder(1500, 20, 420, 232);
    for (let seed = 1; seed <= seeds; seed++) {
      const { channel } = onlyChannel(
        recordOf(curve, { endS: 1600, intervalS: 2, noiseC: 0.3, seed }),
        rulesWith(232),
        60,
      );
      const { timeConstantS, delayS } = channel.fullPower!;
      if (Math.abs(timeConstantS!.value - 1500) < 1.96 * timeConstantS!.standardUncertainty) tauInside += 1;
      if (Math.abs(delayS!.value - 20) < 1.96 * delayS!.standardUncertainty) delayInside += 1;
    }
    for (const inside of [tauInside, delayInside]) {
      expect(inside / seeds).toBeGreaterThan(0.9);
      expect(inside / seeds).toBeLessThan(0.99);
    }
  });

  it('a straight climb has no time constant, and its delay all the same', () => {
    const { channel } = onlyChannel(
      recordOf((timeS) => Math.min(232, 24 + 0.2 * Math.max(0, timeS - 75)), {
        endS: 2400,
        intervalS: 1,
        noiseC: 0.15,
      }),
      rulesWith(232),
      60,
    );
    expect(channel.fullPower!.timeConstantS).toBeNull();
    expect(channel.fullPower!.delayS!.value).toBeCloseTo(15, 0);
    expect(channel.largestRateCPerS).toBeCloseTo(0.2, 1);
  });

  it('without power-on no delay is told, and time counts from the rise', () => {
    const curve = firstOrder(1500, 20, 420, 232);
    const { warmUp, channel } = onlyChannel(
      recordOf(curve, { endS: 2400, intervalS: 1, noiseC: 0.15 }),
      rulesWith(232),
    );
    expect(warmUp.powerOn.by).toBe('rise');
    expect(warmUp.powerOn.timeS).toBeCloseTo(80, 0);
    expect(channel.fullPower!.delayS).toBeNull();
    expect(warmUp.cautions).toContain('power-on-from-rise');
  });
});
