import { describe, expect, it } from 'vitest';
import { styledRowToAnsi } from '../../../../src/adapters/terminal/styled-row-to-ansi.ts';
import { blockText } from '../../../../src/core/chart/block-text.ts';
import { rowText } from '../../../../src/core/chart/row-text.ts';
import type { StyledRow } from '../../../../src/core/chart/StyledRow.ts';
import { ALL_SCREENS } from './all-screens.ts';
import { EVERY_KEY, keyNames } from './key-names.ts';
import { numbersWithoutUnit } from './numbers-without-unit.ts';
import type { Screen } from './Screen.ts';

const NAMES = Object.keys(ALL_SCREENS);
const made = new Map<string, Screen>();
const screen = (name: string): Screen => {
  const one = made.get(name) ?? ALL_SCREENS[name]!();
  made.set(name, one);
  return one;
};

const WINDOWS = [80, 120].flatMap((columns) =>
  [false, true].map((ascii) => [columns, columns === 80 ? 24 : 36, ascii] as const),
);

/** Letters and figures of a row; those of its keys, which stand in reverse, left out. */
const withoutKeys = (row: StyledRow): string =>
  row
    .map(({ text, role }) => (role === 'key' && text.trim().length <= 3 ? text.replace(/\S/g, '_') : text))
    .join('');

describe.each(NAMES)('%s', (name) => {
  it.each(WINDOWS)(
    'fits %i × %i (ASCII %s), says what is simulated, has no number without its unit',
    (columns, rows, ascii) => {
      const one = screen(name);
      const drawn = one.rows(columns, rows, ascii);
      const lines = drawn.map(rowText);
      // The lowest row of the window stays free: a frame as tall as the window would scroll.
      expect(lines).toHaveLength(rows - 1);
      for (const line of lines) expect([...line]).toHaveLength(columns);
      if (ascii) expect(lines.join('')).toMatch(/^[ -~]*$/);
      // A sign without a word of its own in ASCII would stand as a question mark.
      const asked = (text: string) => text.split('?').length;
      if (ascii)
        expect(asked(lines.join(' '))).toBe(asked(one.rows(columns, rows, false).map(rowText).join(' ')));
      expect(lines.join('\n')).not.toMatch(/undefined|null|NaN|Infinity|\[object|function/);
      expect(lines[0]?.includes('SIMULATED')).toBe(one.simulated);
      // The status line, whatever stands above it.
      expect(lines.at(-1)?.trim()).not.toBe('');
      expect(numbersWithoutUnit(drawn.map(withoutKeys))).toEqual([]);
      expect(lines.join(' ')).not.toMatch(/open the press/i);
    },
  );

  it('reads the same without colour, in 16 and in 256 colours', () => {
    for (const row of screen(name).rows(80, 24, false))
      for (const colours of ['none', '16', '256'] as const)
        expect(
          styledRowToAnsi(row, colours)
            .replace(/\u001b\[[\d;]*m/g, '')
            .trimEnd(),
        ).toBe(rowText(row).trimEnd());
  });

  it('says its state in letters, whatever the colours', () => {
    const { words, rows } = screen(name);
    for (const [columns, height, ascii] of WINDOWS) {
      const lines = rows(columns, height, ascii).map(rowText);
      const stands = (word: string) =>
        (['small', 'large'] as const).some((size) =>
          blockText(word, { size, ascii }).every((row) => lines.some((line) => line.includes(row.trimEnd()))),
        );
      words.forEach((word, i) => {
        expect(stands(word) || (ascii && i > 0 && lines.some((line) => line.includes(word))), word).toBe(
          true,
        );
      });
    }
  });

  it('every key of its key line works', () => {
    const one = screen(name);
    const refused = REFUSED[name] ?? [];
    for (const { key } of one.keys) {
      const works = keyNames(key).some((each) => one.press(each));
      expect(works || refused.includes(key), key).toBe(true);
    }
  });

  it('no key does anything that is not shown, but for those that never change their meaning', () => {
    const one = screen(name);
    // While text is typed every letter is text.
    if (one.press('z') && one.press('j')) return;
    const shown = new Set(one.keys.flatMap(({ key }) => keyNames(key)));
    for (const row of one.rows(120, 36, false))
      for (const { text, role } of row)
        if (role === 'key' && /^\s*[A-Z\d]\s*$/.test(text)) shown.add(text.trim().toLowerCase());
    const hidden = EVERY_KEY.filter((key) => !shown.has(key) && one.press(key));
    const [group = ''] = name.split(':');
    const always = [...ALWAYS[group as keyof typeof ALWAYS], ...(ALSO[name] ?? [])];
    expect(hidden.filter((key) => !always.includes(key))).toEqual([]);
  });
});

/** Keys of the key line whose answer is the one that stands there already. */
const REFUSED: Readonly<Record<string, readonly string[]>> = {
  // The same answer is refused again until it is changed.
  'home: question, refused': ['Enter'],
};

/**
 * Keys that do the same wherever they do anything, and are not repeated in each key line: marks, which no open page may make
 * a person miss; unit and help, also where they are not named; Tab beside H.
 */
const ALWAYS = {
  'first use': ['tab', 'f', 'h'],
  trial: ['c', 'o', 'space', 'f', 'h'],
  home: ['tab', 'f', 'h'],
  bonding: ['c', 'o', 'space', 'u', 'h'],
  'warm-up': [],
} as const;

const ALSO: Readonly<Record<string, readonly string[]>> = {
  // Note and leaving close the ready check first.
  'trial: ready check': ['n', 'q'],
  'trial: ready check, probe open': ['n', 'q'],
  'trial: ready check done': ['n', 'q'],
  // The key that opened a page closes it too; N is no.
  'trial: runs chosen': ['r'],
  'trial: overlay': ['v'],
  'trial: budget': ['e', 'd'],
  'trial: leaving asked': ['n'],
  'home: home, quitting': ['n', 'q', 'enter'],
  ...Object.fromEntries(NAMES.filter((name) => name.includes('help')).map((name) => [name, ['enter']])),
  // Recipes are numbered where they are listed.
  'bonding: choosing a recipe': ['1', '2'],
};

describe('help of each screen that times a press', () => {
  it.each(['trial: help', 'trial: help between runs', 'bonding: help'])(
    '%s says at 80 × 24 that the program is no safety device',
    (name) => {
      expect(screen(name).rows(80, 24, false).map(rowText).join(' ')).toMatch(/is no safety device/);
    },
  );
});

describe('the rule for numbers', () => {
  it('finds a bare figure, and takes a unit, a range, a count, a name, an axis', () => {
    expect(numbersWithoutUnit(['bond line 350.1 °F = 176.7 °C  10.0 readings/s  0 lost lines'])).toEqual([]);
    expect(numbersWithoutUnit(['target in about 20 s (19 to 21 s), WB-212, run 3, 212 / 168 mm'])).toEqual(
      [],
    );
    expect(numbersWithoutUnit(['bond line 350.1'])).toEqual(['350.1 in "bond line 350.1"']);
    expect(numbersWithoutUnit(['soak 53.4 now'])).toHaveLength(1);
    expect(numbersWithoutUnit(['   °F', ' 300│  ⣀⣀', '    └──┴ 0 s'])).toEqual([]);
    expect(
      numbersWithoutUnit(['begun  assembly  runs', 'a      WB-212       3', 'soak   WB-212    53']),
    ).toHaveLength(0);
  });
});
