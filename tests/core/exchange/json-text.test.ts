import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CYCLE_FIELDS } from '../../../src/core/exchange/cycle-fields.ts';
import { field } from '../../../src/core/exchange/ExportField.ts';
import { jsonText } from '../../../src/core/exchange/json-text.ts';
import { RECIPE_FIELDS } from '../../../src/core/exchange/recipe-fields.ts';
import { RUN_FIELDS } from '../../../src/core/exchange/run-fields.ts';
import { TRIAL_FIELDS } from '../../../src/core/exchange/trial-fields.ts';
import { anyText } from '../recording/arbitraries.ts';

const FIELDS = [field<string>('text', 'any text', (text) => text)];
const made = { madeAt: '2026-03-02T10:00:00Z', program: 'Dwellwright' };
const textOf = (rows: readonly string[]): string => [...jsonText('texts', FIELDS, rows, made)].join('');

describe('JSON', () => {
  it('says what it is and what each field holds, without and with rows', () => {
    expect(JSON.parse(textOf([]))).toEqual({
      export: 'texts',
      format: 1,
      ...made,
      fields: { text: 'any text' },
      rows: [],
    });
    expect(JSON.parse(textOf(['a', 'b'])).rows).toEqual([{ text: 'a' }, { text: 'b' }]);
  });

  it('keeps any text to the letter, and holds no character that steers a terminal', () => {
    fc.assert(
      fc.property(fc.array(anyText, { maxLength: 5 }), (texts) => {
        const json = textOf(texts);
        expect(JSON.parse(json).rows).toEqual(texts.map((text) => ({ text })));
        expect(json).not.toMatch(/[\x00-\x09\x0b-\x1f\x7f-\x9f\u2028\u2029]|\p{Cf}/u);
      }),
      { numRuns: 500 },
    );
  });

  it('refuses a number that is not finite', () => {
    const fields = [field<number>('timeS', 'time', (value) => value)];
    expect(() => [...jsonText('x', fields, [Number.NaN], made)]).toThrow(RangeError);
  });
});

describe('exported fields', () => {
  it.each([
    ['runs', RUN_FIELDS],
    ['trials', TRIAL_FIELDS],
    ['recipes', RECIPE_FIELDS],
    ['cycles', CYCLE_FIELDS],
  ])('of %s: each name once, in letters that every tool takes, each said what it holds', (_what, fields) => {
    const names = fields.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, about } of fields) {
      expect(name).toMatch(/^[a-z][A-Za-z0-9]*$/);
      expect(about.length).toBeGreaterThan(3);
    }
  });
});
