import { describe, expect, it } from 'vitest';
import { analyseWarmUp } from '../../../src/core/warm-up/analyse-warm-up.ts';
import type { PlatenRecord } from '../../../src/core/warm-up/gather-platens.ts';
import { shippedWarmUp } from './shipped-warm-up.ts';

/** The same warm-up as a slow logger with whole degrees Fahrenheit would have kept it. */
function coarse(record: PlatenRecord, every: number): PlatenRecord {
  return {
    ...record,
    channels: record.channels.map((channel) => ({
      ...channel,
      timesS: channel.timesS.filter((_, i) => i % every === 0),
      valuesC: channel.valuesC
        .filter((_, i) => i % every === 0)
        .map((value) => (Math.round(value * 1.8 + 32) - 32) / 1.8),
    })),
  };
}

describe('a slow logger with steps of 1 °F', () => {
  it.each([
    [10, 0.02, 20],
    [30, 0.04, 45],
  ])(
    'every %i s: time constant within its uncertainty (below %f of it), settling within %i s',
    (every, share, withinS) => {
      const { record, rules, truth } = shippedWarmUp('warm-up-south-1');
      const warmUp = analyseWarmUp(coarse(record, every), rules);
      for (const side of ['upper', 'lower']) {
        const channel = warmUp.channels.find((one) => one.role === `${side}-platen`)!;
        expect(Math.abs(channel.settlingTimeS! - truth(side, 'settling-s')!)).toBeLessThan(withinS);
        expect(Math.abs(channel.steady!.levelC - truth(side, 'level-c')!)).toBeLessThan(0.2);
        expect(Math.abs(channel.overshootC! - truth(side, 'overshoot-c')!)).toBeLessThan(0.8);
        const fitted = channel.fullPower?.timeConstantS;
        if (every === 10) expect(fitted).toBeTruthy();
        if (fitted) {
          expect(Math.abs(fitted.value - truth(side, 'time-constant-s')!)).toBeLessThan(
            4 * fitted.standardUncertainty,
          );
          expect(fitted.standardUncertainty / fitted.value).toBeLessThan(share);
        }
      }
    },
  );

  it('every 60 s: level and settling are still told', () => {
    const { record, rules, truth } = shippedWarmUp('warm-up-north-1');
    const { channels } = analyseWarmUp(coarse(record, 60), rules);
    for (const channel of channels) {
      const side = channel.role.split('-')[0]!;
      expect(Math.abs(channel.steady!.levelC - truth(side, 'level-c')!)).toBeLessThan(0.3);
      expect(Math.abs(channel.settlingTimeS! - truth(side, 'settling-s')!)).toBeLessThan(75);
    }
  });
});
