import { describe, expect, it } from 'vitest';
import { analyseWarmUp } from '../../../src/core/warm-up/analyse-warm-up.ts';
import { DEFAULT_WARM_UP_RULES } from '../../../src/core/warm-up/default-warm-up-rules.ts';
import { findHeatings } from '../../../src/core/warm-up/find-heatings.ts';
import type { PlatenRecord } from '../../../src/core/warm-up/gather-platens.ts';
import { recordOf } from './second-order.ts';
import { SHIPPED_WARM_UPS, shippedWarmUp } from './shipped-warm-up.ts';

const AMBIENT_C = 22;
const SET_C = 232;
/** At full power the plate would go to this temperature: a first-order rise that the controller cuts at the set point. */
const END_C = 600;
const rules = { ...DEFAULT_WARM_UP_RULES, setPointC: { upper: SET_C, lower: SET_C } };

interface Stage {
  readonly onS: number;
  readonly offS: number;
  readonly timeConstantS: number;
}

/**
 * Closed form: heaters on at `onS`, T = end + (start − end)·e^(−(t − on)/τ) up to the set point and held there; off at `offS`,
 * T = ambient + (T_off − ambient)·e^(−(t − off)/1500 s) until they are on again.
 */
function course(stages: readonly Stage[]): (timeS: number) => number {
  return (timeS) => {
    let temperatureC = AMBIENT_C;
    for (const [i, { onS, offS, timeConstantS }] of stages.entries()) {
      if (timeS < onS) return temperatureC;
      const startC = temperatureC;
      const heated = (t: number) =>
        Math.min(SET_C, END_C + (startC - END_C) * Math.exp(-(t - onS) / timeConstantS));
      if (timeS <= offS) return heated(timeS);
      const offC = heated(offS);
      const cooled = (t: number) => AMBIENT_C + (offC - AMBIENT_C) * Math.exp(-(t - offS) / 1500);
      const nextOnS = stages[i + 1]?.onS ?? Number.POSITIVE_INFINITY;
      if (timeS < nextOnS) return cooled(timeS);
      temperatureC = cooled(nextOnS);
    }
    return temperatureC;
  };
}

const TWO: readonly Stage[] = [
  { onS: 60, offS: 3600, timeConstantS: 1800 },
  { onS: 9000, offS: 13_000, timeConstantS: 2200 },
];

function record(stages: readonly Stage[], endS: number, noiseC = 0.1, intervalS = 1): PlatenRecord {
  return recordOf(course(stages), { endS, intervalS, noiseC });
}

describe('heatings of a recording', () => {
  it.each([
    [0.1, 1],
    [0.3, 1],
    [0, 10],
  ])(
    'two heatings, noise %d °C, a reading each %i s: both found, each with its own time constant within 2/100',
    (noiseC, intervalS) => {
      const found = findHeatings(record(TWO, 13_000, noiseC, intervalS));
      expect(found).toHaveLength(2);
      found.forEach((heating, i) => {
        const stage = TWO[i]!;
        expect(heating).toMatchObject({ number: i + 1, of: 2, rises: true });
        const { powerOn, channels } = analyseWarmUp(heating.record, rules);
        expect(Math.abs(powerOn.timeS - stage.onS), 'power-on from the rise').toBeLessThan(15);
        const [upper] = channels;
        expect(Math.abs(upper!.fullPower!.timeConstantS!.value / stage.timeConstantS - 1)).toBeLessThan(0.02);
        // Up to one interval at 0.24 °C/s may have gone by at the first reading.
        expect(Math.abs(upper!.startC - course(TWO)(stage.onS)), 'start').toBeLessThan(1 + 0.24 * intervalS);
        // No cold part went in: what cools is not part of the heating.
        expect(upper!.recoveries).toEqual([]);
        expect(upper!.steady!.levelC).toBeCloseTo(SET_C, 0);
      });
      expect(Math.abs(found[0]!.coolsFromS! - 3600)).toBeLessThan(25);
      expect(found[1]!.coolsFromS).toBeNull();
    },
  );

  it('a power cut in the middle of the rise: two heatings, the second from where it had cooled to', () => {
    const cut: readonly Stage[] = [
      { onS: 60, offS: 700, timeConstantS: 1800 },
      { onS: 2500, offS: 7000, timeConstantS: 1800 },
    ];
    const found = findHeatings(record(cut, 7000));
    expect(found).toHaveLength(2);
    const [, second] = found.map((one) => analyseWarmUp(one.record, rules));
    expect(second!.channels[0]!.startC).toBeCloseTo(course(cut)(2500), 0);
    expect(Math.abs(second!.channels[0]!.fullPower!.timeConstantS!.value / 1800 - 1)).toBeLessThan(0.02);
  });

  it('the note that belongs to each heating gives its power-on, and so its delay', () => {
    const noted: PlatenRecord = { ...record(TWO, 13_000), heatersOnS: [50, 8990] };
    const [first, second] = findHeatings(noted).map((one) => analyseWarmUp(one.record, rules));
    for (const [warmUp, onS] of [
      [first, 50],
      [second, 8990],
    ] as const) {
      expect(warmUp!.powerOn).toEqual({ timeS: onS, by: 'note' });
      // The rise begins 10 s after the note.
      expect(Math.abs(warmUp!.channels[0]!.fullPower!.delayS!.value - 10)).toBeLessThan(2);
    }
  });

  it('cooling before the first heating belongs to none', () => {
    const shift = 2000;
    const cooling = (timeS: number) =>
      timeS < shift ? AMBIENT_C + 200 * Math.exp(-timeS / 600) : course([TWO[0]!])(timeS - shift);
    const found = findHeatings(recordOf(cooling, { endS: shift + 3600, intervalS: 1, noiseC: 0.1 }));
    expect(found).toHaveLength(1);
    expect(found[0]!.record.channels[0]!.timesS[0]).toBeGreaterThan(1500);
  });

  it.each(SHIPPED_WARM_UPS)('%s, with its cold part, is one heating and the whole recording', (name) => {
    const { record: whole } = shippedWarmUp(name);
    const [one, ...more] = findHeatings(whole);
    expect(more).toEqual([]);
    expect(one!.record.channels.map(({ timesS }) => timesS.length)).toEqual(
      whole.channels.map(({ timesS }) => timesS.length),
    );
  });

  it('platens that only hold their set point are one stretch that does not rise', () => {
    const [one, ...more] = findHeatings(recordOf(() => SET_C, { endS: 3600, intervalS: 1, noiseC: 0.2 }));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ rises: false, coolsFromS: null });
  });

  it('no readings at all: one stretch, nothing thrown', () => {
    const empty = record(TWO, 10);
    const channels = empty.channels.map((channel) => ({ ...channel, timesS: [], valuesC: [] }));
    expect(findHeatings({ ...empty, channels })).toHaveLength(1);
  });
});
