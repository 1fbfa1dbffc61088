import { expect, it } from 'vitest';
import { openLoggerFile } from '../../../src/core/logger-file/open-logger-file.ts';

const open = (text: string) => openLoggerFile(new TextEncoder().encode(text), { unit: 'C' });
const rows = (row: (second: number) => string) =>
  Array.from({ length: 30 }, (_, second) => row(second)).join('\n');

it('a comma between columns and inside numbers is refused, not read without its fractions', () => {
  const text = `time_s,temp_C\n${rows((second) => `${second},${24 + second},${String((second * 37) % 100).padStart(2, '0')}`)}\n`;
  expect(() => open(text)).toThrow(/stand in the numbers too/);
});

it('whole numbers with a name for every column, and a last column without name beside decimal points, are read', () => {
  expect(
    open(`time_s,temp_C,count\n${rows((second) => `${second},${24 + second},${second}`)}\n`).layout
      .columnCount,
  ).toBe(3);
  expect(
    open(`time_s,temp_C,\n${rows((second) => `${second},${24 + second}.25,7`)}\n`).layout.columnCount,
  ).toBe(3);
});
