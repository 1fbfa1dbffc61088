import { describe, expect, it } from 'vitest';
import { heldChart } from '../../../src/core/figure/held-chart.ts';
import { lotDifferenceChart } from '../../../src/core/figure/lot-difference-chart.ts';
import type { Picture, Shape } from '../../../src/core/figure/Picture.ts';
import { surveyMap } from '../../../src/core/figure/survey-map.ts';
import { whatIfChart } from '../../../src/core/figure/what-if-chart.ts';
import { surveyPlaten } from '../../../src/core/survey/survey-platen.ts';

const flat = (shapes: readonly Shape[]): readonly Exclude<Shape, { kind: 'clipped' }>[] =>
  shapes.flatMap((shape) => (shape.kind === 'clipped' ? shape.shapes : [shape]));
const words = (picture: Picture | null) =>
  flat(picture?.shapes ?? []).flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
const colours = (picture: Picture | null) =>
  new Set(
    flat(picture?.shapes ?? []).flatMap((shape) => (shape.kind === 'path' ? [shape.stroke, shape.fill] : [])),
  );

const survey = (places: boolean) =>
  surveyPlaten(
    [230, 231, 232.5, 229, 233].map((levelC, at) => ({
      label: `channel ${at + 1}`,
      place: places ? { xMm: 30 + (at % 3) * 120, yMm: 30 + Math.floor(at / 3) * 120 } : null,
      samples: {
        timesS: Float64Array.from({ length: 61 }, (_, step) => step - 60),
        valuesC: Float64Array.from({ length: 61 }, () => levelC),
      },
    })),
    { overS: 60, endS: 0, limitC: 10 / 1.8 },
  );

describe('the map of a platen', () => {
  // 233 °C is 451.4 °F, 229 °C is 444.2 °F; the mean 231.1 °C: +1.9 °C = +3.4 °F, −2.1 °C = −3.8 °F. Spread 4 °C = 7.2 °F.
  it('writes each figure in: hottest 451.4 °F (+3.4), coldest 444.2 °F (−3.8), spread 7.2 °F', () => {
    const said = words(surveyMap({ survey: survey(true), unit: 'F', simulated: false }));
    for (const expected of ['▲ 451.4 °F', '+3.4', '▼ 444.2 °F', '−3.8', 'spread 7.2 °F (4 °C)'])
      expect(said).toContain(expected);
    expect(said).toContain('mm from the front edge');
  });

  it('is told in grey alone', () => {
    for (const colour of colours(surveyMap({ survey: survey(true), unit: 'C', simulated: false }))) {
      if (colour === undefined) continue;
      const [, red, green, blue] = /^#(..)(..)(..)$/.exec(colour) ?? [];
      expect([red, green]).toEqual([green, blue]);
    }
  });

  it('is none where places are not known', () => {
    expect(surveyMap({ survey: survey(false), unit: 'F', simulated: false })).toBeNull();
  });
});

describe('dwell against target', () => {
  const row = (targetC: number, meanDwellS: number | null) => ({
    targetC,
    runs: 5,
    meanSoakS: 50,
    meanDwellS,
    nextRunDwellS: meanDwellS === null ? null : meanDwellS + 2,
    toleranceDwellS: null,
    chosenDwellS: meanDwellS,
  });

  it('names its axes with units and only the rules that give a dwell', () => {
    const said = words(whatIfChart({ rows: [row(170, 168), row(180, 174)], unit: 'F', simulated: true }));
    for (const expected of ['Dwell, s', 'Target at the bond line, °F', 'mean rule', 'SIMULATED'])
      expect(said).toContain(expected);
    expect(said).not.toContain('most cycles hold fully');
  });

  it('leaves a gap at a target that gives none, and is none where no target does', () => {
    const some = whatIfChart({
      rows: [row(170, 168), row(175, null), row(180, 174)],
      unit: 'C',
      simulated: false,
    });
    expect(JSON.stringify(some)).not.toMatch(/NaN|null/);
    expect(whatIfChart({ rows: [row(170, null)], unit: 'C', simulated: false })).toBeNull();
  });
});

describe('a lot less the middle of the band', () => {
  // Band 90 to 110 °C throughout, middle 100; a cycle at 103 °C throughout lies 3 °C (5.4 °F) above it.
  const input = {
    cycles: [
      {
        label: '1',
        clean: true,
        points: Array.from({ length: 101 }, (_, timeS) => ({
          timeS,
          temperatureC: timeS === 50 ? null : 103,
        })),
      },
    ],
    band: Array.from({ length: 101 }, (_, timeS) => ({ timeS, lowC: 90, highC: 110 })),
    targetC: 177,
    dwellS: 100,
    unit: 'F' as const,
    simulated: false,
  };

  it('a cycle at 103 °C over a middle of 100 °C is a level line 3 °C above zero', () => {
    const picture = lotDifferenceChart(input);
    const cycle = flat(picture?.shapes ?? []).find(
      (shape) => shape.kind === 'path' && shape.stroke === '#17406d',
    );
    const ys = [...(cycle?.kind === 'path' ? cycle.d : '').matchAll(/,([\d.]+)/g)].map((match) =>
      Number(match[1]),
    );
    // ±10 °C of band with 6 % of room over 190 units about 107: 3 °C is 190 · 3 ÷ 21.2 = 26.9 above.
    expect(ys.length).toBeGreaterThan(40);
    for (const y of ys) expect(y).toBeCloseTo(107 - 26.9, 0);
    expect(words(picture)).toContain('Difference, °F');
  });

  it('is none without a band', () => {
    expect(lotDifferenceChart({ ...input, band: [] })).toBeNull();
  });
});

it('times closed of one cycle alone make no chart; of two, filled and open marks', () => {
  const one = { number: 1, clean: true, heldS: 175, wantedS: 174 };
  expect(heldChart({ cycles: [one], simulated: false })).toBeNull();
  const two = heldChart({ cycles: [one, { ...one, number: 2, clean: false, heldS: 160 }], simulated: false });
  const fills = flat(two?.shapes ?? []).flatMap((shape) =>
    shape.kind === 'path' && shape.fill ? [shape.fill] : [],
  );
  expect(fills).toEqual(['#1a1a1a', '#ffffff']);
});
