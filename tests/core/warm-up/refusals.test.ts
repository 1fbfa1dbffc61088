import { describe, expect, it } from 'vitest';
import { analyseWarmUp } from '../../../src/core/warm-up/analyse-warm-up.ts';
import { onlyChannel, recordOf, rulesWith, secondOrder } from './second-order.ts';

const curve = (timeS: number) => 24 + 208 * secondOrder(1, 0.01, timeS - 60);

describe('what cannot be worked out', () => {
  it('no platen channel, and under 30 readings, are refused with what to do', () => {
    const record = recordOf(curve, { endS: 2000, intervalS: 1 });
    expect(() => analyseWarmUp({ ...record, channels: [] }, rulesWith(232))).toThrow(
      expect.objectContaining({ code: 'no-platen-channel', remedy: expect.stringContaining('--roles') }),
    );
    expect(() => analyseWarmUp(recordOf(curve, { endS: 20, intervalS: 1 }), rulesWith(232))).toThrow(
      expect.objectContaining({ code: 'too-few-readings' }),
    );
  });

  it('without a set point: settling is told, band, offset and READY are not', () => {
    const record = recordOf(curve, { endS: 2400, intervalS: 1, noiseC: 0.1 });
    const { warmUp, channel } = onlyChannel(record, { ...rulesWith(232), setPointC: null }, 60);
    expect(channel.settlingTimeS).not.toBeNull();
    expect([
      channel.reachesBandS,
      channel.staysInBandS,
      channel.steady!.meanOffsetC,
      warmUp.readyAtS,
    ]).toEqual([null, null, null, null]);
    expect(warmUp.cautions).toContain('no-set-point');
  });

  it('a warm start and a rise already under way are said', () => {
    const hot = recordOf((timeS) => 180 + 52 * secondOrder(1, 0.01, timeS - 60), {
      endS: 2400,
      intervalS: 1,
      noiseC: 0.1,
    });
    expect(onlyChannel(hot, rulesWith(232), 60).warmUp.cautions).toContain('began-hot');
    const late = recordOf((timeS) => 40 + Math.min(192, 0.2 * timeS), {
      endS: 2400,
      intervalS: 1,
      noiseC: 0.1,
    });
    expect(onlyChannel(late, rulesWith(232)).warmUp.cautions).toContain('heating-had-begun');
  });

  it.each([
    ['a platen that never heats', () => 24],
    ['one that only cools', (timeS: number) => 232 - timeS / 20],
    ['a single step', (timeS: number) => (timeS < 500 ? 24 : 232)],
    ['saw teeth', (timeS: number) => 24 + (timeS % 100)],
    ['nothing but the same value', () => 232],
  ])('%s: finite figures or none, no failure', (_, odd) => {
    for (const noiseC of [0, 0.2]) {
      const { warmUp } = onlyChannel(recordOf(odd, { endS: 1200, intervalS: 1, noiseC }), rulesWith(232));
      const walk = (value: unknown): void => {
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
        else if (value !== null && typeof value === 'object') Object.values(value).forEach(walk);
      };
      walk(warmUp);
    }
  });

  it('a platen that creeps up by 20 °C an hour is still drifting, and its last reading is no overshoot', () => {
    const creeping = recordOf(
      (timeS) => 24 + 200 * secondOrder(1, 0.02, timeS - 60) + Math.max(0, timeS - 400) / 180,
      { endS: 1300, intervalS: 1, noiseC: 0.1 },
    );
    const { warmUp, channel } = onlyChannel(creeping, rulesWith(226), 60);
    expect(warmUp.cautions).toContain('still-drifting');
    expect(channel.steady!.driftCPerHour.value).toBeCloseTo(20, 0);
    expect(channel.overshootC).toBe(0);
  });

  it('a rise that sways by 0.6 % of its height about one curve has a rough time constant, and it is said', () => {
    const swaying = (timeS: number) =>
      timeS <= 60
        ? 24
        : Math.min(232, 24 + 400 * -Math.expm1((60 - timeS) / 900) + 1.2 * Math.sin((timeS - 60) / 20));
    const { warmUp, channel } = onlyChannel(
      recordOf(swaying, { endS: 2400, intervalS: 1, noiseC: 0.1 }),
      rulesWith(232),
      60,
    );
    expect(channel.fullPower!.rough).toBe(true);
    expect(warmUp.cautions).toContain('full-power-rough');
    expect(Math.abs(channel.fullPower!.timeConstantS!.value / 900 - 1)).toBeLessThan(0.1);
  });
});
