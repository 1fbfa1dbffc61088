import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DwellwrightError } from '../../../src/core/DwellwrightError.ts';
import type { LoggerFileOptions } from '../../../src/core/logger-file/LoggerLayout.ts';
import { readFile } from './read-file.ts';

const options: fc.Arbitrary<LoggerFileOptions> = fc.record(
  {
    timeColumn: fc.constantFrom('1', '2', 'Time', 'x'),
    temperatureColumns: fc.constantFrom([], ['2'], ['T1', '3']),
    unit: fc.constantFrom('C' as const, 'F' as const, 'K' as const),
    timeUnit: fc.constantFrom('s' as const, 'ms' as const, 'us' as const, 'min' as const, 'h' as const),
    intervalS: fc.constantFrom(0.5, 0, -1, Number.NaN),
  },
  { requiredKeys: [] },
);

const piece = fc.constantFrom(
  '0',
  '1',
  '2.5',
  '1,5',
  '-1000',
  'nan',
  '"',
  '""',
  ',',
  ';',
  '\t',
  '|',
  ' ',
  '\n',
  '\r\n',
  '\r',
  'Time',
  'T1',
  '(C)',
  '[s]',
  '°F',
  'K',
  '10:00:00',
  '2024-05-01',
  '1/2/2024',
  '10:00',
  'AM',
  '#',
  '//',
  'e9',
  '.',
  '-',
  '\ufeff',
  '\u001b[2J',
  '999999999999999999999',
  '1e308',
); // prettier-ignore
const tableText = fc
  .array(
    fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join('')),
    { maxLength: 30 },
  )
  .map((lines) => lines.join('\n'));
const rows = fc
  .array(fc.tuple(fc.nat(5000), fc.float({ noNaN: false }), piece), { minLength: 2, maxLength: 30 })
  .map((all) => `Time,T1,x\n${all.map(([time, value, more]) => `${time},${value},${more}`).join('\n')}`);

function readsOrRefuses(file: string | Uint8Array, chosen: LoggerFileOptions): void {
  try {
    const { samples, entries } = readFile(file, chosen);
    let lastUs = 0;
    for (const entry of entries) {
      expect(Number.isSafeInteger(entry.arrivedUs)).toBe(true);
      expect(entry.arrivedUs).toBeGreaterThanOrEqual(lastUs);
      lastUs = entry.arrivedUs;
    }
    for (const sample of samples) {
      expect(Number.isFinite(sample.deviceTimeUs)).toBe(true);
      for (const value of sample.channels) {
        if (value.kind === 'temperature') expect(Number.isFinite(value.temperatureC)).toBe(true);
      }
    }
  } catch (error) {
    if (!(error instanceof DwellwrightError)) throw error;
    expect(error.exitCode).toBe(2);
    expect(error.remedy).not.toBeNull();
    expect(`${error.message}${error.remedy}`).not.toMatch(/[\u0000-\u001f\u007f-\u009f]/);
  }
}

describe('any text at all', () => {
  it('is read, or refused with a remedy, with finite values and arrivals that never run back (pieces of tables)', () => {
    fc.assert(fc.property(fc.oneof(tableText, rows), options, readsOrRefuses), { numRuns: 1500 });
  });

  it('is read or refused as bytes of any kind', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), options, readsOrRefuses), { numRuns: 500 });
  });

  it('is read or refused as text of any kind', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 400 }), options, readsOrRefuses), {
      numRuns: 500,
    });
  });

  it('reads 200,000 rows in one pass', { timeout: 20_000 }, () => {
    const lines = Array.from(
      { length: 200_000 },
      (_, at) => `${(at / 10).toFixed(1)},${(20 + (at % 1000) / 10).toFixed(1)}`,
    );
    expect(readFile(`Time (s),T1 (C)\n${lines.join('\n')}\n`).samples).toHaveLength(200_000);
  });

  it.each([
    ['quotes', '"'.repeat(300_000)],
    ['a quote on every line', '0,"20\n'.repeat(100_000)],
    ['one endless line', '1,'.repeat(500_000)],
    ['digits', '1'.repeat(500_000)],
    ['dashes', '-'.repeat(500_000)],
    ['spaces', `a${' '.repeat(500_000)}b`],
    ['brackets', `${'('.repeat(100_000)}\n0,1\n1,2\n`],
    ['letters', `Time (s),T1 (C)\n${'0,20\n1,21\n'.repeat(10)}${'deg '.repeat(100_000)}\n`],
    ['line ends', '\r'.repeat(500_000)],
  ])('does not slow down on %s', { timeout: 5_000 }, (_, file) => {
    readsOrRefuses(file, {});
  });
});
