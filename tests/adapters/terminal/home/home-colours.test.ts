import { describe, expect, it } from 'vitest';
import { styledRowToAnsi } from '../../../../src/adapters/terminal/styled-row-to-ansi.ts';
import { rowText } from '../../../../src/core/chart/row-text.ts';
import { PAGES } from '../../../core/screen-home/shop.ts';

const ESCAPE = /\u001b\[([\d;]*)m/g;
const codes = (text: string) =>
  [...text.matchAll(ESCAPE)].flatMap(([, list]) => (list ?? '').split(';').map(Number));

describe('frames of the screens around the trial as terminal text', () => {
  it.each(Object.keys(PAGES))(
    '%s: the same letters with and without colour, at 80 × 24 and 120 × 36',
    (name) => {
      for (const [columns, rows] of [
        [80, 24],
        [120, 36],
      ] as const) {
        for (const row of PAGES[name]!().rows(columns, rows)) {
          for (const colours of ['none', '16', '256'] as const)
            expect(styledRowToAnsi(row, colours).replace(ESCAPE, '').trimEnd()).toBe(rowText(row).trimEnd());
          // Without colour: weight, underline and reverse only. With the 16: letters in red or magenta, no background.
          for (const code of codes(styledRowToAnsi(row, 'none'))) expect([0, 1, 2, 4, 7]).toContain(code);
          for (const code of codes(styledRowToAnsi(row, '16')))
            expect([0, 1, 2, 4, 7, 31, 35]).toContain(code);
        }
      }
    },
  );
});
