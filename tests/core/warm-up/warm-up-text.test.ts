import { describe, expect, it } from 'vitest';
import {
  definitionLines,
  FIGURE_NAMES,
  readyStateLines,
  timeText,
} from '../../../src/core/text/warm-up-text.ts';
import { createReadyWatch } from '../../../src/core/warm-up/create-ready-watch.ts';
import { WARM_UP_FIGURES } from '../../../src/core/warm-up/warm-up-figures.ts';

describe('words of a warm-up', () => {
  it('every figure has a name, every definition a text', () => {
    for (const { key } of WARM_UP_FIGURES) expect(FIGURE_NAMES[key], key).toBeTruthy();
    expect(definitionLines().length).toBeGreaterThanOrEqual(14);
    // Each figure's own words, or those of its family, stand among the definitions, once.
    const names = definitionLines().flatMap((line) => line.split(':')[0]!.split(', '));
    expect(new Set(names).size).toBe(names.length);
    for (const name of [
      'time constant',
      'delay',
      'ripple',
      'settling time',
      'overshoot',
      'rise time',
      'READY',
    ])
      expect(names).toContain(name);
  });

  it('times: 42.3 s, 119.9 s, 2 min 0 s, 21 min 5 s, −3 min 0 s', () => {
    expect([42.3, 119.9, 120, 1265, -180].map(timeText)).toEqual([
      '42.3 s',
      '119.9 s',
      '2 min 0 s',
      '21 min 5 s',
      '−3 min 0 s',
    ]);
  });

  it('the live watch says where it stands, how long to go, READY, and silence', () => {
    const watch = createReadyWatch({
      rule: { bandC: 3, forS: 300 },
      platens: [{ label: 'upper platen', setPointC: 232 }],
    });
    const lines = () => readyStateLines(watch.state, 300, 'C');
    expect(lines()).toEqual(['Not READY: no reading from upper platen.']);
    for (let timeS = 0; timeS <= 600; timeS++) watch.accept(timeS, [100 + 0.2 * timeS]);
    // The middle of five readings is that of 598 s, 219.6 °C. 220 °C after 600 s: 9 °C to the band at 0.2 °C/s, then five minutes: 345 s at the earliest.
    expect(lines()[0]).toBe('Not READY: upper platen 12.4 °C (22.3 °F) below set point.');
    expect(lines()[1]).toMatch(/^READY in about \d min/);
    for (let timeS = 601; timeS <= 700; timeS++) watch.accept(timeS, [232]);
    expect(lines()[0]).toMatch(/^Inside the band for 9\d(\.\d)? s of 5 min 0 s\.$/);
    expect(lines()[1]).toMatch(/^READY in about 3 min \d+ s\.$/);
    for (let timeS = 701; timeS <= 950; timeS++) watch.accept(timeS, [232]);
    expect(lines()[0]).toMatch(/^READY: every platen inside its band for 5 min \d+ s\.$/);
    for (let timeS = 951; timeS <= 965; timeS++) watch.accept(timeS, [null]);
    expect(lines()).toEqual(['Not READY: no reading from upper platen.']);
  });
});
