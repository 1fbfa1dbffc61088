import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../src/core/reading/StreamEvent.ts';
import { channelAtRest } from '../../../src/core/ready-check/channel-at-rest.ts';
import { gaugeFor } from '../../../src/core/ready-check/gauge-for.ts';
import type { ChannelAtRest, ReadyFacts, ReadyItemName } from '../../../src/core/ready-check/ReadyCheck.ts';
import { isSettled, readyCheck } from '../../../src/core/ready-check/ready-check.ts';
import { readyWords } from '../../../src/core/text/ready-text.ts';
import { DEMO_ASSEMBLY, DEMO_PRESS } from '../../../src/program/commands/demo-shop.ts';

const at = (
  role: ChannelAtRest['role'],
  channel: number,
  meanC: number,
  over: Partial<ChannelAtRest> = {},
) => ({
  channel,
  role,
  latest: { kind: 'temperature' as const, temperatureC: meanC },
  meanC,
  noiseC: 0.1,
  driftCPerS: 0.001,
  overS: 20,
  ...over,
});

const FACTS: ReadyFacts = {
  reader: { kind: 'speaks', ratePerS: 10 },
  channels: [
    at('bond-line', 1, 24),
    at('bond-line-outer', 2, 24.6),
    at('upper-platen', 3, 232.5),
    at('lower-platen', 4, 230),
  ],
  rules: { targetC: 176.667, platenSetPointC: { upper: 232.2, lower: 232.2 } },
  cooling: { kind: 'cool', temperatureC: 24 },
  gauge: gaugeFor(DEMO_PRESS, DEMO_ASSEMBLY),
  confirmed: ['gauge', 'placement', 'bell'],
  overridden: {},
};

const item = (name: ReadyItemName, over: Partial<ReadyFacts> = {}) => {
  const found = readyCheck(Object.freeze({ ...FACTS, ...over })).find((one) => one.name === name);
  if (found === undefined) throw new Error(name);
  return found;
};
const withChannel = (channel: number, over: Partial<ChannelAtRest>): Partial<ReadyFacts> => ({
  channels: FACTS.channels.map((one) => (one.channel === channel ? { ...one, ...over } : one)),
});

describe('readyCheck', () => {
  it('all nine items are in order at a press that is ready', () => {
    const items = readyCheck(FACTS);
    expect(items.map((one) => one.state)).toEqual(Array.from({ length: 9 }, () => 'ready'));
    expect(items.every(isSettled)).toBe(true);
  });

  it.each<[string, ReadyItemName, Partial<ReadyFacts>, string, string]>([
    ['reader lost', 'reader', { reader: { kind: 'lost', cause: 'unplugged' } }, 'not-ready', 'reader-lost'],
    [
      'reader silent for 4 s',
      'reader',
      { reader: { kind: 'silent', ageS: 4 } },
      'not-ready',
      'reader-silent',
    ],
    [
      'open probe',
      'probes',
      withChannel(2, { latest: { kind: 'fault', fault: 'open-circuit' } }),
      'not-ready',
      'probe-fault',
    ],
    [
      'missing value',
      'probes',
      withChannel(1, { latest: { kind: 'missing' } }),
      'not-ready',
      'probe-missing',
    ],
    [
      'bond line at 180 °C before closing',
      'probes',
      withChannel(1, { latest: { kind: 'temperature', temperatureC: 180 } }),
      'not-ready',
      'probe-implausible',
    ],
    [
      'bond line at −30 °C',
      'probes',
      withChannel(1, { latest: { kind: 'temperature', temperatureC: -30 } }),
      'not-ready',
      'probe-implausible',
    ],
    ['probes 4.3 °C apart', 'agreement', withChannel(2, { meanC: 28.3 }), 'ready', 'probes-agree'],
    ['probes 4.5 °C apart', 'agreement', withChannel(2, { meanC: 28.5 }), 'not-ready', 'probes-apart'],
    ['bond line still moving', 'agreement', withChannel(2, { driftCPerS: 0.5 }), 'wait', 'probes-moving'],
    [
      'one probe only',
      'agreement',
      { channels: FACTS.channels.filter((one) => one.channel !== 2) },
      'not-checked',
      'one-probe',
    ],
    ['scatter 1.4 °C', 'noise', withChannel(1, { noiseC: 1.4 }), 'not-ready', 'noise-high'],
    [
      'only 3 s of readings',
      'noise',
      { channels: FACTS.channels.map((one) => ({ ...one, overS: 3 })) },
      'wait',
      'noise-awaited',
    ],
    ['lower platen 6 °C low', 'platens', withChannel(4, { meanC: 226.2 }), 'not-ready', 'platen-off'],
    ['lower platen 4.9 °C low', 'platens', withChannel(4, { meanC: 227.3 }), 'ready', 'platens-steady'],
    [
      'lower platen rises by 4 °C in 20 s',
      'platens',
      withChannel(4, { driftCPerS: 0.2 }),
      'not-ready',
      'platen-moving',
    ],
    [
      'no platen measured',
      'platens',
      { channels: FACTS.channels.slice(0, 2) },
      'not-checked',
      'platens-not-measured',
    ],
    [
      'carrier at 61 °C',
      'carrier',
      { cooling: { kind: 'warm', temperatureC: 61, limitC: 32, wait: null, why: 'too-early' } },
      'not-ready',
      'carrier-warm',
    ],
    ['gauge not confirmed', 'gauge', { confirmed: ['placement', 'bell'] }, 'ask', 'gauge'],
    ['sizes not known', 'gauge', { gauge: null, confirmed: [] }, 'ask', 'gauge-unknown'],
    ['tip not confirmed', 'placement', { confirmed: ['gauge', 'bell'] }, 'ask', 'placement'],
    ['bell not heard', 'bell', { confirmed: ['gauge', 'placement'] }, 'ask', 'bell'],
  ])('%s: %s', (_what, name, over, state, code) => {
    expect(item(name, over)).toMatchObject({ state, code });
  });

  it('every item that holds something up says what to do, in either unit, without a figure missing', () => {
    const trouble: Partial<ReadyFacts> = {
      reader: { kind: 'silent', ageS: 4 },
      cooling: { kind: 'warm', temperatureC: 61, limitC: 32, wait: null, why: 'not-cooling' },
      confirmed: [],
      ...withChannel(1, { latest: { kind: 'fault', fault: 'open-circuit' }, noiseC: 3, meanC: 40 }),
    };
    for (const one of readyCheck({ ...FACTS, ...trouble })) {
      for (const unit of ['F', 'C'] as const) {
        const { found, todo } = readyWords(one, unit);
        expect(found).not.toMatch(/—|NaN|undefined/);
        if (!isSettled(one)) expect(todo).not.toBe('');
      }
    }
  });

  it('gone on with for a reason, an item holds nothing up and keeps how it stands', () => {
    const over = { ...withChannel(4, { meanC: 226.2 }), overridden: { platens: 'second shift set it so' } };
    const found = item('platens', over);
    expect(found).toMatchObject({ state: 'not-ready', overridden: 'second shift set it so' });
    expect(isSettled(found)).toBe(true);
  });

  it('never throws and always gives nine items when nothing is known', () => {
    const items = readyCheck({
      reader: { kind: 'silent', ageS: null },
      channels: [channelAtRest([], 1, 'bond-line')],
      rules: { targetC: 176.667, platenSetPointC: null },
      cooling: null,
      gauge: null,
      confirmed: [],
      overridden: {},
    });
    expect(items).toHaveLength(9);
    expect(items.filter(isSettled).map((one) => one.name)).toEqual(['agreement', 'platens']);
  });
});

describe('gaugeFor', () => {
  it('the demo ring 212/168 mm on a 200 mm ram: 225 psi net at 94.05 psi gauge', () => {
    // gauge = net · ring area / ram area = 225 · (212² − 168²)/200² (closed form).
    expect(gaugeFor(DEMO_PRESS, DEMO_ASSEMBLY)?.gaugePsi).toBeCloseTo(
      (225 * (212 ** 2 - 168 ** 2)) / 200 ** 2,
      6,
    );
  });

  it('is not known without the ring', () => {
    expect(gaugeFor(DEMO_PRESS, { ...DEMO_ASSEMBLY, ringInnerDiameterMm: null })).toBeNull();
  });
});

describe('channelAtRest', () => {
  const readings = (of: (i: number) => number): readonly Reading[] =>
    Array.from({ length: 101 }, (_, i) => ({
      timeS: 50 + i / 10,
      arrivedUs: 0,
      values: [{ kind: 'temperature' as const, temperatureC: of(i) }],
    }));

  it('a straight rise of 0.3 °C/s has that drift and no scatter', () => {
    const found = channelAtRest(
      readings((i) => 20 + 0.03 * i),
      1,
      'bond-line',
    );
    expect(found.driftCPerS).toBeCloseTo(0.3, 9);
    expect(found.noiseC).toBeCloseTo(0, 6);
    expect(found.meanC).toBeCloseTo(21.5, 9);
    expect(found.overS).toBeCloseTo(10, 9);
  });

  it('values alternating by ±0.5 °C scatter by 0.505 °C', () => {
    // Closed form: Σ = 101 · 0.25 less the mean's share, over 99 degrees of freedom.
    const found = channelAtRest(
      readings((i) => 24 + (i % 2 === 0 ? 0.5 : -0.5)),
      1,
      'bond-line',
    );
    expect(found.noiseC).toBeCloseTo(Math.sqrt((101 * 0.25 - 0.25 / 101) / 99), 4);
  });

  it('a fault among the values is left out, not taken as a number', () => {
    const all = readings(() => 24).map((reading, i) =>
      i === 50
        ? { ...reading, values: [{ kind: 'fault' as const, fault: 'open-circuit' as const }] }
        : reading,
    );
    expect(channelAtRest(all, 1, 'bond-line')).toMatchObject({ meanC: 24, noiseC: 0 });
  });
});
