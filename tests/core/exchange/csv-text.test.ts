import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvCellText } from '../../../src/core/exchange/csv-cell-text.ts';
import { csvText } from '../../../src/core/exchange/csv-text.ts';
import { type ExportValue, field } from '../../../src/core/exchange/ExportField.ts';
import { neutralise } from '../../../src/core/text/neutralise.ts';
import { anyText } from '../recording/arbitraries.ts';

interface Row {
  readonly text: string;
  readonly value: ExportValue;
}
const FIELDS = [
  field<Row>('text', 'any text', (row) => row.text),
  field<Row>('valueS', 'any value', (row) => row.value),
];
const csvOf = (rows: readonly Row[]): string => [...csvText(FIELDS, rows)].join('');

/** What the documentation says takes a text back out of its cell. */
const asWritten = (cell: string): string => cell.replace(/(^|;)'/g, '$1');

/** Texts that begin as a formula does, in front of anything. */
const formulaText = fc
  .tuple(
    fc.constantFrom(
      '=',
      '+',
      '-',
      '@',
      '\t',
      '\r',
      '\uFF1D',
      '\uFF0B',
      '\uFF0D',
      '\uFF20',
      ' =',
      ';=',
      "'=",
      "';'@",
    ),
    anyText,
  )
  .map(([start, rest]) => start + rest);

describe('CSV', () => {
  it('is as RFC 4180 has it: CR LF, commas, quotes doubled, a heading line (section 2, rules 1 to 7)', () => {
    expect(csvOf([{ text: 'a,"b"', value: -0.25 }])).toBe('"text","valueS"\r\n"a,""b""",-0.25\r\n');
  });

  it('writes a missing value as nothing, an empty text as quotes, truth as words, every digit of a number', () => {
    const rows: Row[] = [null, true, false, 0, -0, 1e21, 1e-7, 176.66666666666666].map((value) => ({
      text: '',
      value,
    }));
    expect(csvOf(rows).split('\r\n').slice(1, -1)).toEqual(
      ['', 'true', 'false', '0', '0', '1e+21', '1e-7', '176.66666666666666'].map((value) => `"",${value}`),
    );
  });

  it('puts a list into one cell', () => {
    expect(csvOf([{ text: 'x', value: ['a', '=b'] }])).toContain('"x","a | =b"');
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('refuses %d', (value) => {
    expect(() => csvOf([{ text: 'x', value }])).toThrow(RangeError);
  });

  it('read back by csv-parse, 500 any texts come back as they were, controls made visible', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(anyText, formulaText), { maxLength: 6 }), (texts) => {
        const csv = csvOf(texts.map((text) => ({ text, value: 1 })));
        const rows = parse(csv, { columns: true, record_delimiter: '\r\n' }) as {
          text: string;
          valueS: string;
        }[];
        expect(rows.map((row) => asWritten(row.text))).toEqual(
          texts.map((text) => neutralise(text, { longest: 32_000 })),
        );
        expect(rows.every((row) => row.valueS === '1')).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});

describe('a cell of text', () => {
  // The characters are those of "CSV Injection", Open Worldwide Application Security Project (community page): = + - @ tab
  // CR, and the wide forms; from memory.
  it('never begins, nor goes on after a semicolon, as a formula does', () => {
    fc.assert(
      fc.property(fc.oneof(anyText, formulaText), (text) => {
        const cell = csvCellText(text);
        for (const part of cell.split(';'))
          expect(part).not.toMatch(/^\s*[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/);
        expect(cell).not.toMatch(/[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]/);
      }),
      { numRuns: 1_000 },
    );
  });

  it.each([
    ['=1+2', "'=1+2"],
    ['-5 min later', "'-5 min later"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['  +1', "'  +1"],
    ["'quoted", "''quoted"],
    ['late; =1+2', "late;' =1+2"],
    ['\t=1', '\\x09=1'],
    ['\x1b[2J', '\\x1B[2J'],
    ['probe slipped at -3 s', 'probe slipped at -3 s'],
    ['WB-212', 'WB-212'],
  ])('%j becomes %j', (text, cell) => {
    expect(csvCellText(text)).toBe(cell);
  });
});
