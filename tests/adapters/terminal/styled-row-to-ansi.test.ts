import { describe, expect, it } from 'vitest';
import type { Colours } from '../../../src/adapters/terminal/palette.ts';
import { styledRowToAnsi } from '../../../src/adapters/terminal/styled-row-to-ansi.ts';
import { trialFrame } from '../../../src/core/screen/trial-frame.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { SCRIPTS, scripted } from '../../core/screen/scripted-trial.ts';

const drawn = (name: string, columns: number, rows: number, colours: Colours) =>
  trialFrame(trialView(scripted(name).state, { columns, rows, ascii: false })).map((row) =>
    styledRowToAnsi(row, colours),
  );
const codes = (lines: readonly string[]) =>
  new Set(
    lines.flatMap((line) =>
      [...line.matchAll(/\u001b\[([0-9;]*)m/g)].flatMap((m) => (m[1] ?? '').split(';')),
    ),
  );

describe('styledRowToAnsi', () => {
  it.each(Object.keys(SCRIPTS))(
    '%s: the same words with and without colour, at 80 × 24 and 120 × 36',
    (name) => {
      for (const [columns, rows] of [
        [80, 24],
        [120, 36],
      ] as const) {
        const strip = (lines: readonly string[]) =>
          lines.map((line) => line.replace(/\u001b\[[0-9;]*m/g, ''));
        const plain = strip(drawn(name, columns, rows, 'none'));
        for (const colours of ['16', '256'] as const)
          expect(strip(drawn(name, columns, rows, colours))).toEqual(plain);
        expect(Math.max(...plain.map((line) => line.length))).toBeLessThanOrEqual(columns);
      }
    },
  );

  it.each(Object.keys(SCRIPTS))(
    '%s: without colour only weight, dim, underline and reverse; with 16 colours only red and magenta',
    (name) => {
      for (const code of codes(drawn(name, 80, 24, 'none')))
        expect(['0', '1', '2', '4', '7', '']).toContain(code);
      for (const code of codes(drawn(name, 80, 24, '16'))) {
        // Never white, yellow, green, cyan, black or blue letters: they vanish on a light or a dark background.
        expect(['0', '1', '2', '4', '7', '31', '35', '']).toContain(code);
      }
    },
  );

  it('leaves out blanks at the end and ends every style it begins', () => {
    expect(
      styledRowToAnsi(
        [
          { text: 'a', role: 'fault' },
          { text: '   ', role: 'plain' },
        ],
        '16',
      ),
    ).toBe('\u001b[1;31ma\u001b[0m');
    expect(
      styledRowToAnsi(
        [
          { text: ' ', role: 'plain' },
          { text: '  ', role: 'plain' },
        ],
        '256',
      ),
    ).toBe('');
  });
});
