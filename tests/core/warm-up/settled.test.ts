import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../src/core/simulator/create-random.ts';
import { findRipple } from '../../../src/core/warm-up/find-ripple.ts';
import { straightDrift } from '../../../src/core/warm-up/straight-drift.ts';
import { withoutSpikes } from '../../../src/core/warm-up/without-spikes.ts';
import { onlyChannel, recordOf, rulesWith, secondOrder } from './second-order.ts';

const samples = (of: (timeS: number) => number, count: number, intervalS: number) => ({
  timesS: Float64Array.from({ length: count }, (_, i) => i * intervalS),
  valuesC: Float64Array.from({ length: count }, (_, i) => of(i * intervalS)),
});

describe('ripple', () => {
  it.each([
    [7.3, 0.4],
    [31.7, 0.3],
    [118, 1.5],
  ])(
    'a sine of period %f s and amplitude %f °C under 0.15 °C of noise: period to 1 %%, amplitude to 0.06 °C',
    (periodS, amplitudeC) => {
      for (let seed = 1; seed <= 10; seed++) {
        const random = createRandom(seed);
        const ripple = findRipple(
          samples(
            (timeS) =>
              232 + amplitudeC * Math.sin((2 * Math.PI * timeS) / periodS + seed) + 0.15 * random.normal(),
            1200,
            1,
          ),
        );
        expect(Math.abs(ripple!.periodS / periodS - 1)).toBeLessThan(0.01);
        expect(Math.abs(ripple!.amplitudeC - amplitudeC)).toBeLessThan(0.06);
      }
    },
  );

  it('of 200 records of noise alone at most two show a ripple (chance 0.1 % each)', () => {
    let found = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const random = createRandom(seed);
      if (findRipple(samples(() => 232 + 0.15 * random.normal(), 400, 1)) !== null) found += 1;
    }
    expect(found).toBeLessThanOrEqual(2);
  });

  it('drift is no ripple', () => {
    const random = createRandom(3);
    expect(findRipple(samples((timeS) => 230 + timeS / 900 + 0.1 * random.normal(), 900, 1))).toBeNull();
  });
});

describe('drift', () => {
  it('1.5 °C/h is found, and the stated uncertainty holds: 95 % of 200 within t(10) = 2.228 of it (NIST e-Handbook 1.3.6.7.2)', () => {
    let inside = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const random = createRandom(seed);
      const drift = straightDrift(
        samples((timeS) => 232 + (1.5 * timeS) / 3600 + 0.2 * random.normal(), 1200, 1),
      )!;
      if (Math.abs(drift.value - 1.5) < 2.228 * drift.standardUncertainty) inside += 1;
    }
    expect(inside / 200).toBeGreaterThan(0.9);
    expect(inside / 200).toBeLessThan(0.99);
  });
});

describe('spikes', () => {
  it('two in a warm-up are left out and change nothing', () => {
    const curve = (timeS: number) => 24 + 208 * secondOrder(1, 0.01, timeS - 60);
    const clean = recordOf(curve, { endS: 2400, intervalS: 1, noiseC: 0.1 });
    const spoilt = recordOf(curve, { endS: 2400, intervalS: 1, noiseC: 0.1 });
    (spoilt.channels[0]!.valuesC as number[])[700] = 1370;
    (spoilt.channels[0]!.valuesC as number[])[1900] = 190;
    const [a, b] = [clean, spoilt].map((record) => onlyChannel(record, rulesWith(232), 60).channel);
    expect(b!.spikes).toBe(2);
    expect(b!.settlingTimeS).toBeCloseTo(a!.settlingTimeS!, 0);
    expect(b!.steady!.levelC).toBeCloseTo(a!.steady!.levelC, 2);
    expect(b!.overshootC).toBe(a!.overshootC);
  });

  it('a climb of 1 °C a reading holds none, also at its ends', () => {
    expect(withoutSpikes(samples((timeS) => 24 + timeS, 100, 1)).spikes).toBe(0);
    expect(withoutSpikes(samples((timeS) => 24 + 2.9 * timeS, 100, 1)).spikes).toBe(0);
  });
});

describe('recovery after a cold part', () => {
  // Dip D·(t/a)·e^(1 − t/a): deepest D at t = a, closed form; back within the band where D·(t/a)·e^(1−t/a) = band.
  const depthC = 8;
  const paceS = 45;
  const dip = (since: number) => (since <= 0 ? 0 : depthC * (since / paceS) * Math.exp(1 - since / paceS));
  const record = (noiseC: number) =>
    recordOf((timeS) => 24 + 208 * secondOrder(1, 0.012, timeS - 60) - dip(timeS - 2400), {
      endS: 3200,
      intervalS: 1,
      noiseC,
    });
  let backS = paceS;
  while (dip(backS) > 2 / 1.8) backS += 0.01;

  it('told by the contact: depth, time of the lowest and time back within 2 °F', () => {
    for (const noiseC of [0, 0.15]) {
      const { warmUp } = onlyChannel(
        { ...record(noiseC), closings: [{ timeS: 2400, by: 'contact' }] },
        rulesWith(232),
        60,
      );
      const [recovery, more] = warmUp.channels[0]!.recoveries;
      expect(more).toBeUndefined();
      expect(recovery).toMatchObject({ by: 'contact', partInS: 2340 });
      expect(Math.abs(recovery!.depthC - depthC)).toBeLessThan(0.15);
      expect(Math.abs(recovery!.lowestAfterS - paceS)).toBeLessThan(8);
      expect(Math.abs(recovery!.recoveryTimeS! - backS)).toBeLessThan(5);
    }
  });

  it('without a contact the trace tells the start within 3 s', () => {
    const { channel } = onlyChannel(record(0.1), rulesWith(232), 60);
    expect(channel.recoveries[0]).toMatchObject({ by: 'trace' });
    expect(Math.abs(channel.recoveries[0]!.partInS - 2340)).toBeLessThan(3);
  });

  it('the dip is in none of the steady figures', () => {
    const { channel } = onlyChannel(record(0), rulesWith(232), 60);
    expect(channel.steady!.toS).toBeLessThan(2345);
    expect(channel.steady!.levelC).toBeCloseTo(232, 1);
  });

  it('swings of the settling are no cold parts, and a record that ends low has no recovery', () => {
    const swings = onlyChannel(
      recordOf((timeS) => 24 + 208 * secondOrder(0.15, 0.01, timeS - 60), { endS: 5000, intervalS: 1 }),
      rulesWith(232),
      60,
    );
    expect(swings.channel.recoveries).toEqual([]);
    const cut = record(0);
    const channel = cut.channels[0]!;
    const low = onlyChannel(
      {
        ...cut,
        channels: [
          { ...channel, timesS: channel.timesS.slice(0, 2460), valuesC: channel.valuesC.slice(0, 2460) },
        ],
      },
      rulesWith(232),
      60,
    );
    expect(low.channel.recoveries[0]!.recoveryTimeS).toBeNull();
  });
});
