import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseRecording } from '../../../src/core/recording/parse-recording.ts';
import { drawSurveyMap } from '../../../src/core/survey/draw-survey-map.ts';
import { readPlaceList, readPlaceTable } from '../../../src/core/survey/read-places.ts';
import { surveyPlaten } from '../../../src/core/survey/survey-platen.ts';
import { gatherPlatens } from '../../../src/core/warm-up/gather-platens.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';

const probe = (label: string, valueC: (timeS: number) => number, xMm = 0, yMm = 0) => ({
  label,
  place: { xMm, yMm },
  samples: {
    timesS: Float64Array.from({ length: 101 }, (_, i) => i),
    valuesC: Float64Array.from({ length: 101 }, (_, i) => valueC(i)),
  },
});
const settings = { overS: 100, endS: 100, limitC: 5 };

describe('platen survey', () => {
  it('means 228, 230, 231, 235 °C: spread 7 °C, mean 231, standard deviation √(26/3) = 2.944', () => {
    const result = surveyPlaten(
      [228, 230, 231, 235].map((valueC, i) => probe(`channel ${i + 1}`, () => valueC)),
      settings,
    );
    expect(result.spreadC).toBeCloseTo(7, 9);
    expect(result.meanC).toBeCloseTo(231, 9);
    expect(result.sdC).toBeCloseTo(Math.sqrt(26 / 3), 9);
    expect([result.hottest.label, result.coldest.label]).toEqual(['channel 4', 'channel 1']);
    expect(result.withinLimit).toBe(false);
    expect(result.cautions).toEqual(['few-probes']);
  });

  it('a spread equal to the limit is within it', () => {
    const probes = [230, 235].map((valueC) => probe('one', () => valueC));
    expect(surveyPlaten(probes, settings).withinLimit).toBe(true);
    expect(surveyPlaten(probes, { ...settings, limitC: 4.999 }).withinLimit).toBe(false);
  });

  it('a climb of 1.2 °C a minute is told and is not steady', () => {
    const result = surveyPlaten(
      [0, 1, 2, 3, 4].map((i) => probe('one', (timeS) => 230 + i + timeS * 0.02)),
      settings,
    );
    expect(result.probes[0]!.driftCPerMin).toBeCloseTo(1.2, 1);
    expect(result.cautions).toContain('not-steady');
  });

  it('refuses one probe, and a probe that fell silent before the averaged time', () => {
    expect(() => surveyPlaten([probe('one', () => 230)], settings)).toThrow(/two probes/);
    expect(() =>
      surveyPlaten([probe('one', () => 230), probe('two', () => 230)], { ...settings, endS: 400 }),
    ).toThrow(expect.objectContaining({ code: 'too-few-readings' }));
  });

  it.each(['north', 'south'])(
    'survey-%s-lower: differences from the mean as in its head, to 0.1 °C',
    (press) => {
      const url = new URL(`../../../recordings/survey-${press}-lower.dwell.txt`, import.meta.url);
      const { head, entries } = parseRecording(readFileSync(url, 'utf8'));
      const record = gatherPlatens(entries, createReaderDecoder({}), head.roles);
      const result = surveyPlaten(
        record.channels.map(({ channel, timesS, valuesC }) => ({
          label: String(channel),
          place: null,
          samples: { timesS: Float64Array.from(timesS), valuesC: Float64Array.from(valuesC) },
        })),
        { overS: 300, endS: record.endedS, limitC: 10 / 1.8 },
      );
      const truths = head.further['truth-differences-c']!.split(',').map(Number);
      const middle = truths.reduce((sum, value) => sum + value, 0) / truths.length;
      result.probes.forEach((one, i) => {
        expect(Math.abs(one.meanC - result.meanC - (truths[i]! - middle))).toBeLessThan(0.1);
      });
      expect(Math.abs(result.spreadC - Number(head.further['truth-spread-c']))).toBeLessThan(0.1);
      expect(result.withinLimit).toBe(press === 'north');
    },
  );
});

describe('map of a survey', () => {
  const survey = surveyPlaten(
    [
      probe('front left', () => 230, 30, 30),
      probe('front right', () => 226, 270, 30),
      probe('back left', () => 231, 30, 270),
      probe('back right', () => 233, 270, 270),
    ],
    settings,
  );

  it('shows each difference at its place: back above, right at the right, hottest and coldest marked', () => {
    const { lines, leftOut } = drawSurveyMap(survey, { unit: 'C', ascii: false })!;
    expect(leftOut).toEqual([]);
    const at = (text: string) => {
      const row = lines.findIndex((line) => line.includes(text));
      return { row, column: lines[row]!.indexOf(text) };
    };
    expect(at('▲+3.0').row).toBeLessThan(at('▼−4.0').row);
    expect(at('+1.0').row).toBe(at('▲+3.0').row);
    expect(at('+1.0').column).toBeLessThan(at('▲+3.0').column);
    expect(at(' 0.0').row).toBe(at('▼−4.0').row);
    expect(new Set(lines.map((line) => line.length)).size).toBe(1);
    expect(lines[0]!.length).toBeLessThanOrEqual(79);
    expect(lines.length).toBeLessThanOrEqual(27);
  });

  it('shows °F differences ×1.8 without + 32, and plain ASCII when asked', () => {
    const { lines } = drawSurveyMap(survey, { unit: 'F', ascii: true })!;
    const text = lines.join('\n');
    expect(text).toContain('^+5.4');
    expect(text).toContain('v-7.2');
    expect(/^[\x20-\x7e\n]*$/.test(text)).toBe(true);
  });

  it('tells which probes found no room, and draws probes in one line or one spot', () => {
    const crowd = surveyPlaten(
      Array.from({ length: 12 }, (_, i) => probe(`channel ${i + 1}`, () => 230 + i / 10, 100, 100)),
      settings,
    );
    const map = drawSurveyMap(crowd, { unit: 'F', ascii: false })!;
    const drawn = map.lines.join('').match(/[+−]\d|\D0\.0/gu)!.length;
    expect(drawn + map.leftOut.length).toBe(12);
    expect(map.leftOut.length).toBeGreaterThan(0);
    const line = surveyPlaten(
      [0, 1, 2].map((i) => probe('one', () => 230 + i, 100 * i, 50)),
      settings,
    );
    expect(drawSurveyMap(line, { unit: 'F', ascii: false })!.leftOut).toEqual([]);
  });

  it('is none without places', () => {
    const bare = { ...survey, probes: survey.probes.map((one) => ({ ...one, place: null })) };
    expect(drawSurveyMap(bare, { unit: 'F', ascii: false })).toBeNull();
  });
});

describe('places of the probes', () => {
  it('reads x/y with units, the unit once or on each', () => {
    expect(readPlaceList('30/30mm, 270mm/30mm; 1in/2in')).toEqual([
      { xMm: 30, yMm: 30 },
      { xMm: 270, yMm: 30 },
      { xMm: 25.4, yMm: 50.8 },
    ]);
  });

  it('reads a table with commas, semicolons or tabs, in mm or inches, with a file column', () => {
    expect(readPlaceTable('\uFEFFchannel,x_mm,y_mm\r\n1,30,40\r\n2,270,40\r\n')).toEqual([
      { file: null, channel: 1, xMm: 30, yMm: 40 },
      { file: null, channel: 2, xMm: 270, yMm: 40 },
    ]);
    expect(readPlaceTable('File;Channel;x (in);y (in)\na.dwell.txt;3;1,5;2')[0]).toEqual({
      file: 'a.dwell.txt',
      channel: 3,
      xMm: 1.5 * 25.4,
      yMm: 50.8,
    });
    expect(readPlaceTable('probe\tx_mm\ty_mm\n"4"\t1\t2')[0]!.channel).toBe(4);
  });

  it.each(['30 30', '30/30', 'a/b mm', '1/2/3mm'])('refuses "%s" and says how to write it', (text) => {
    expect(() => readPlaceList(text)).toThrow(expect.objectContaining({ code: 'positions-unreadable' }));
  });

  it.each(['', 'a,b,c\n1,2,3', 'channel,x_mm,y_mm\n0,1,2', 'channel,x_mm,y_mm\n1,one,2'])(
    'refuses the table %j',
    (text) => {
      expect(() => readPlaceTable(text)).toThrow(
        expect.objectContaining({ code: 'positions-unreadable', remedy: expect.stringContaining('x_mm') }),
      );
    },
  );
});
