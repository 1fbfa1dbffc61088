import { describe, expect, it } from 'vitest';
import type { StreamEvent } from '../../../src/core/reading/StreamEvent.ts';
import type { ChannelRole } from '../../../src/core/recording/RecordingEntry.ts';
import type { RunReasonCode, RunRules, Verdict } from '../../../src/core/run/RunResult.ts';
import { runReasonText } from '../../../src/core/text/run-reasons.ts';
import {
  closedKey,
  createNoise,
  EXAMPLE,
  type Heating,
  heatingAt,
  makeReadings,
  openedKey,
  type StreamSetup,
  trueSoak,
  withEvents,
} from './make-heating.ts';
import { track } from './track.ts';

const HEATING: Heating = { ...EXAMPLE, delayS: 1.5 };
const CROSS_S = 20 + trueSoak(HEATING, 176.67);
const PLATENS = { platenSetPointC: { upper: 232.2, lower: 232.2 } };
const FOUR: readonly ChannelRole[] = ['bond-line', 'bond-line-outer', 'upper-platen', 'lower-platen'];

/** A marked run with bond line, outer edge and both platens; the setup alters the bond line (channel 1). */
function fourChannels(setup: StreamSetup = {}, outer: Heating = HEATING, platenC = 232.2): StreamEvent[] {
  const others = [(t: number) => heatingAt(outer, t - 20), () => platenC, () => platenC];
  return withEvents(
    makeReadings({ heating: HEATING, noiseC: 0.15, openedS: null, endS: 210, others, ...setup }),
    closedKey(20),
    openedKey(205),
  );
}

/** A marked run with the bond line only. */
function oneChannel(setup: StreamSetup = {}): StreamEvent[] {
  return withEvents(
    makeReadings({ heating: HEATING, openedS: 205, endS: 240, ...setup }),
    closedKey(20),
    openedKey(205),
  );
}

function judged(
  events: readonly StreamEvent[],
  rules: Partial<RunRules> = {},
  roles?: readonly ChannelRole[],
) {
  const { results } = track(events, rules, roles);
  expect(results).toHaveLength(1);
  const [result] = results;
  for (const reason of result!.reasons)
    for (const unit of ['F', 'C'] as const) {
      const sentence = runReasonText(reason, { unit });
      expect(sentence).toMatch(/^[A-Z].*[.?]$/);
      expect(sentence).not.toMatch(/undefined|NaN|null|—/);
    }
  return {
    verdict: result!.verdict as Verdict,
    codes: result!.reasons.map((one) => one.code),
    result: result!,
  };
}

describe('checks, good runs raise nothing', () => {
  it('a good run of four channels is good without a reason', () => {
    expect(judged(fourChannels(), PLATENS, FOUR)).toMatchObject({ verdict: 'good', codes: [] });
  });

  it('200 seeded good runs with varied noise, step, rate, τ and delay are good without a reason', () => {
    const random = createNoise(42);
    for (let seed = 1; seed <= 200; seed++) {
      const heating = {
        startC: 18 + 10 * random.uniform(),
        platenC: 225 + 15 * random.uniform(),
        timeConstantS: 25 + 23 * random.uniform(),
        delayS: 0.5 + 2 * random.uniform(),
      };
      const rateHz = [1, 2, 4, 10, 20][Math.floor(5 * random.uniform())]!;
      const stepC = [0.02, 0.0625, 0.1, 0.25, 0.5][Math.floor(5 * random.uniform())]!;
      const setup = { heating, rateHz, stepC, noiseC: 0.4 * random.uniform(), phase: random.uniform(), seed };
      const openedS = 20 + trueSoak(heating, 176.67) + 122;
      const events = withEvents(
        makeReadings({ ...setup, openedS, endS: openedS + 30 }),
        closedKey(20 + 0.2 * random.uniform()),
        openedKey(openedS),
      );
      const rules =
        seed % 2 === 0 ? { platenSetPointC: { upper: heating.platenC, lower: heating.platenC } } : {};
      expect({ setup, ...pick(judged(events, rules)) }).toMatchObject({ verdict: 'good', codes: [] });
    }
  });

  it('a single unmarked channel without known platens or room is good, whatever its time constant of 5 to 300 s', () => {
    for (const timeConstantS of [5, 10, 20, 60, 100, 300]) {
      const events = makeReadings({
        heating: { ...HEATING, timeConstantS },
        endS: 20 + 4 * timeConstantS + 130,
        rateHz: 2,
      });
      const { verdict, codes } = judged(events, { ambientC: null, warmCarrierLimitC: 15 });
      expect({ timeConstantS, verdict }).toEqual({ timeConstantS, verdict: 'good' });
      expect(codes).toContain('from-onset');
    }
  });
});

function pick({ verdict, codes }: { verdict: Verdict; codes: RunReasonCode[] }) {
  return { verdict, codes };
}

describe('checks, each failure is named', () => {
  it('probe taped over: slow start and plateau of 205 °C between platens of 232 °C', () => {
    const taped = { heating: { ...HEATING, platenC: 205, delayS: 8 } };
    const { verdict, codes } = judged(fourChannels(taped), PLATENS, FOUR);
    expect(verdict).toBe('suspect');
    expect(codes).toContain('probe-not-at-bond-line');
  });

  it('probe on the platen from the closing on', () => {
    const { verdict, codes } = judged(
      fourChannels({ heating: { ...HEATING, timeConstantS: 1, delayS: 0 } }),
      PLATENS,
      FOUR,
    );
    expect(verdict).toBe('unusable');
    expect(codes[0]).toBe('probe-on-platen');
  });

  it('probe touches the platen half-way: jump to 228 °C', () => {
    const events = fourChannels({ alter: (t, v) => (t > 45 ? 228 : v) });
    const { verdict, codes } = judged(events, PLATENS, FOUR);
    expect(verdict).toBe('unusable');
    expect(codes[0]).toBe('probe-on-platen');
  });

  it('wire broken at 50 s, no other probe: unusable', () => {
    const { verdict, codes } = judged(oneChannel({ alter: (t, v) => (t > 50 ? 'open-circuit' : v) }));
    expect(verdict).toBe('unusable');
    expect(codes).toContain('probe-open-circuit');
  });

  it('wire broken at 50 s, outer edge sound: suspect, timed by the outer edge', () => {
    const events = fourChannels({ alter: (t, v) => (t > 50 ? 'open-circuit' : v) });
    const { verdict, codes, result } = judged(events, PLATENS, FOUR);
    expect(verdict).toBe('suspect');
    expect(codes).toContain('probe-open-circuit');
    expect(Math.abs(result.crossing!.timeS - CROSS_S)).toBeLessThan(0.1);
  });

  it('full-scale values of 1372 °C are no temperature and no peak', () => {
    const { codes, result } = judged(oneChannel({ alter: (t, v) => (t > 100 && t < 103 ? 1372 : v) }));
    expect(codes).toContain('probe-open-circuit');
    expect(result.peakC).toBeLessThan(235);
  });

  it('plug reversed: falls while heating', () => {
    const { verdict, codes } = judged(oneChannel({ alter: (_, v) => 24 - 0.9 * (v - 24) }));
    expect(verdict).toBe('unusable');
    expect(codes[0]).toBe('plug-reversed');
  });

  it('wrong thermocouple type: levels off at 300 °C between platens of 232 °C', () => {
    const { verdict, codes } = judged(fourChannels({ alter: (_, v) => 24 + 1.33 * (v - 24) }), PLATENS, FOUR);
    expect(verdict).toBe('suspect');
    expect(codes).toContain('wrong-thermocouple-type');
  });

  it('second junction: step of 20 °C as the press closes', () => {
    const { verdict, codes } = judged(
      fourChannels({ alter: (t, v) => (t > 20 ? v + 20 * (1 - v / 240) : v) }),
      PLATENS,
      FOUR,
    );
    expect(verdict).toBe('suspect');
    expect(codes).toContain('second-junction');
    expect(codes).not.toContain('late-mark');
  });

  it('extension reversed: 12 °C off the other probe at rest', () => {
    const { verdict, codes } = judged(fourChannels({ alter: (_, v) => v - 12 }), PLATENS, FOUR);
    expect(verdict).toBe('suspect');
    expect(codes).toContain('extension-reversed');
  });

  it('probes 2 °C apart at rest are within the tolerance of new wire', () => {
    expect(judged(fourChannels({ alter: (_, v) => v - 2 }), PLATENS, FOUR).codes).not.toContain(
      'extension-reversed',
    );
  });

  it('ground shift of 6 °C with the heater, 4 s on, 4 s off', () => {
    const { verdict, codes } = judged(oneChannel({ alter: (t, v) => (t % 8 < 4 ? v + 6 : v) }));
    expect(verdict).toBe('suspect');
    expect(codes).toContain('ground-shift');
  });

  it('interference: 1 % spikes of ±30 °C', () => {
    const random = createNoise(3);
    const { verdict, codes, result } = judged(
      oneChannel({
        alter: (_, v) => (random.uniform() < 0.01 ? v + (random.uniform() < 0.5 ? 30 : -30) : v),
      }),
    );
    expect(verdict).toBe('suspect');
    expect(codes).toContain('interference');
    expect(Math.abs(result.crossing!.timeS - CROSS_S)).toBeLessThan(0.1);
  });

  it('interference: ripple of 3 °C at 0.7 Hz', () => {
    const { codes } = judged(oneChannel({ alter: (t, v) => v + 3 * Math.sin(2 * Math.PI * 0.7 * t) }));
    expect(codes).toContain('interference');
  });

  it('two spikes in a run are no interference', () => {
    const alter = (t: number, v: number) => (Math.abs(t - 50) < 0.01 || Math.abs(t - 90) < 0.01 ? v + 40 : v);
    expect(judged(oneChannel({ alter })).codes).toEqual([]);
  });

  it('carrier warm: starts at 45 °C in a room of 24 °C', () => {
    const { verdict, codes, result } = judged(oneChannel({ heating: { ...HEATING, startC: 45 } }));
    expect(verdict).toBe('suspect');
    expect(codes).toEqual(['carrier-warm']);
    expect(runReasonText(result.reasons[0]!, { unit: 'F' })).toContain('113 °F (45 °C)');
  });

  it('carrier at 28 °C in a room of 24 °C is within 5 °C', () => {
    expect(judged(oneChannel({ heating: { ...HEATING, startC: 28 } })).codes).toEqual([]);
  });

  it('ram low: τ 70 s where both channels are slow', () => {
    const slow = { ...HEATING, timeConstantS: 70 };
    const { verdict, codes } = judged(
      fourChannels({ heating: slow, endS: 260 }, slow),
      { ...PLATENS, holdS: 60 },
      FOUR,
    );
    expect(verdict).toBe('suspect');
    expect(codes).toEqual(['slow-rise']);
  });

  it('platen 12 °C below its set point at closing', () => {
    const { verdict, codes } = judged(fourChannels({}, HEATING, 220), PLATENS, FOUR);
    expect(verdict).toBe('suspect');
    expect(codes).toContain('platen-low');
  });

  it('platens 3 °C below set point are within 5 °C', () => {
    expect(judged(fourChannels({}, HEATING, 229.2), PLATENS, FOUR).codes).not.toContain('platen-low');
  });

  it('taper: outer edge crosses 8 s later', () => {
    const outer = { ...HEATING, timeConstantS: 46.5 };
    const { verdict, codes } = judged(fourChannels({}, outer), PLATENS, FOUR);
    expect(verdict).toBe('suspect');
    expect(codes).toEqual(['uneven-bond-line']);
  });

  it('channels 0.8 s apart are even', () => {
    expect(judged(fourChannels({}, { ...HEATING, timeConstantS: 41.1 }), PLATENS, FOUR).codes).toEqual([]);
  });

  it.each([
    [12, 'unusable', 'gap-at-crossing'],
    [3, 'suspect', 'gap-near-crossing'],
  ] as const)('gap of %i s over the crossing: %s', (gapS, verdict, code) => {
    const from = CROSS_S - gapS / 2;
    const one = judged(oneChannel({ alter: (t, v) => (t > from && t < from + gapS ? 'lost' : v) }));
    expect(one.verdict).toBe(verdict);
    expect(one.codes).toContain(code);
  });

  it('fault of 12 s over the crossing: unusable', () => {
    const alter = (t: number, v: number) =>
      t > CROSS_S - 6 && t < CROSS_S + 6 ? ('open-circuit' as const) : v;
    const { verdict, codes } = judged(oneChannel({ alter }));
    expect(verdict).toBe('unusable');
    expect(codes).toContain('fault-at-crossing');
  });

  it('gap of 5 s in the early rise is a note', () => {
    const { verdict, codes } = judged(oneChannel({ alter: (t, v) => (t > 40 && t < 45 ? 'lost' : v) }));
    expect(verdict).toBe('good');
    expect(codes).toEqual(['gap']);
  });

  it('reader restarted in the hold: noted, run good', () => {
    const gap: StreamEvent = {
      kind: 'gap',
      fromS: 120,
      toS: 121.5,
      cause: 'reader-restarted',
      lostSamples: null,
    };
    const events = withEvents(oneChannel({ alter: (t, v) => (t > 120 && t < 121.5 ? 'lost' : v) }), gap);
    const { verdict, codes } = judged(events);
    expect(verdict).toBe('good');
    expect(codes).toContain('reader-restarted');
  });

  it('started above the target: unusable', () => {
    const { verdict, codes } = judged(oneChannel({ alter: (_, v) => v + 160 }));
    expect(verdict).toBe('unusable');
    expect(codes[0]).toBe('started-above-target');
  });

  it('spoilt by the operator, with the words given', () => {
    const spoilt: StreamEvent = { kind: 'mark', timeS: 60, mark: { kind: 'spoilt', reason: 'ring slipped' } };
    const { verdict, codes, result } = judged(withEvents(oneChannel(), spoilt));
    expect(verdict).toBe('unusable');
    expect(codes[0]).toBe('spoilt');
    expect(runReasonText(result.reasons[0]!, { unit: 'F' })).toBe('Marked as spoilt: ring slipped.');
  });

  it('no temperature at all: unusable', () => {
    const { verdict, codes } = judged(oneChannel({ alter: () => null }));
    expect(verdict).toBe('unusable');
    expect(codes[0]).toBe('no-readings');
  });

  it('noise of 2 °C is noted, run good', () => {
    const { verdict, codes } = judged(oneChannel({ noiseC: 2 }));
    expect(verdict).toBe('good');
    expect(codes).toContain('noisy');
  });
});
