import { describe, expect, it } from 'vitest';
import { roleStyle } from '../../../src/adapters/terminal/palette.ts';
import type { SegmentRole } from '../../../src/core/chart/StyledRow.ts';

type Rgb = readonly [number, number, number];
const BLACK: Rgb = [0, 0, 0];
const WHITE: Rgb = [255, 255, 255];

/** Relative luminance of an sRGB colour: WCAG 2.2, definition of "relative luminance". */
function luminance(rgb: Rgb): number {
  const [r, g, b] = rgb.map((byte) => {
    const c = byte / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** (L1 + 0.05) / (L2 + 0.05), the lighter first: WCAG 2.2, definition of "contrast ratio". */
function contrast(one: Rgb, other: Rgb): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/** Colour of a number from 16 to 255: six levels a channel, then 24 greys (xterm's 256colres.pl). */
function cube(index: number): Rgb {
  if (index >= 232) return [0, 1, 2].map(() => 8 + 10 * (index - 232)) as unknown as Rgb;
  const levels = [0, 95, 135, 175, 215, 255];
  return [36, 6, 1].map((step) => levels[Math.floor((index - 16) / step) % 6]) as unknown as Rgb;
}

/**
 * Red and magenta, dark then bright, as common programs paint them by default (table "Colors" of the encyclopaedia's article
 * "ANSI escape code"). Bold letters are painted bright by some, dark by others; the VGA text mode always paints them bright.
 */
const SIXTEEN: Readonly<
  Record<string, { red: readonly [Rgb, Rgb]; magenta: readonly [Rgb, Rgb]; boldIsBright: boolean }>
> = {
  VGA: {
    red: [
      [170, 0, 0],
      [255, 85, 85],
    ],
    magenta: [
      [170, 0, 170],
      [255, 85, 255],
    ],
    boldIsBright: true,
  },
  'a terminal of one desktop': {
    red: [
      [187, 0, 0],
      [255, 85, 85],
    ],
    magenta: [
      [187, 0, 187],
      [255, 85, 255],
    ],
    boldIsBright: false,
  },
  xterm: {
    red: [
      [205, 0, 0],
      [255, 0, 0],
    ],
    magenta: [
      [205, 0, 205],
      [255, 0, 255],
    ],
    boldIsBright: false,
  },
  'a terminal of another desktop': {
    red: [
      [194, 54, 33],
      [252, 57, 31],
    ],
    magenta: [
      [211, 56, 211],
      [249, 53, 248],
    ],
    boldIsBright: false,
  },
};

const ROLES = [
  'plain',
  'quiet',
  'strong',
  'axis',
  'target',
  'mark',
  'bond-line',
  'bond-line-inner',
  'bond-line-outer',
  'upper-platen',
  'lower-platen',
  'ambient',
  'band',
  'fault',
  'good',
  'caution',
  'key',
  'flash',
] as const satisfies readonly SegmentRole[];

describe('contrast of the palette', () => {
  it('the formulas give 21 : 1 for black on white and 4.54 : 1 for #767676 on white', () => {
    expect(contrast(BLACK, WHITE)).toBeCloseTo(21, 6);
    // The darkest grey that AA passes on white is a much quoted figure (WebAIM).
    expect(contrast([0x76, 0x76, 0x76], WHITE)).toBeCloseTo(4.54, 2);
    expect(cube(243)).toEqual([0x76, 0x76, 0x76]);
    expect(cube(196)).toEqual([255, 0, 0]);
    expect(cube(28)).toEqual([0, 135, 0]);
  });

  it.each(ROLES)('%s in 256 colours: at least 4 : 1 on black and on white, no background set', (role) => {
    const style = roleStyle(role, '256');
    expect(style).toMatch(/^(|[17]|1;7|(1;)?38;5;\d{2,3})$/);
    const index = /38;5;(\d+)/.exec(style)?.[1];
    // No colour: the person's own letters on the person's own background.
    if (index === undefined) return;
    // 0 to 15 are whatever the terminal likes.
    expect(Number(index)).toBeGreaterThanOrEqual(16);
    for (const background of [BLACK, WHITE])
      expect(contrast(cube(Number(index)), background)).toBeGreaterThanOrEqual(4);
  });

  it.each(ROLES)('%s in 16 colours: at least 3 : 1 on black and on white, in each common palette', (role) => {
    const style = roleStyle(role, '16');
    expect(style).toMatch(/^(|[1247]|1;7|1;31|35)$/);
    if (!/3[15]/.test(style)) return;
    const bold = style.startsWith('1;');
    for (const [name, { red, magenta, boldIsBright }] of Object.entries(SIXTEEN)) {
      const [dark, bright] = style.includes('31') ? red : magenta;
      const painted = !bold ? [dark] : boldIsBright ? [bright] : [dark, bright];
      for (const colour of painted)
        for (const background of [BLACK, WHITE])
          expect(contrast(colour, background), `${name} ${colour} on ${background}`).toBeGreaterThanOrEqual(
            3,
          );
    }
  });

  it.each(ROLES)('%s without colour: weight, faintness, underline and reverse only', (role) => {
    expect(roleStyle(role, 'none')).toMatch(/^(|[1247]|1;[47])$/);
  });

  it('what must be seen at once is told apart without colour too: fault, caution, good and flash by four styles', () => {
    const styles = (['fault', 'caution', 'good', 'quiet'] as const).map((role) => roleStyle(role, 'none'));
    expect(new Set(styles).size).toBe(4);
  });

  it('the rule can fail: xterm’s green and cyan on white, VGA’s blue on black, yellow on white are under 3 : 1', () => {
    expect(contrast([0, 205, 0], WHITE)).toBeLessThan(3);
    expect(contrast([0, 205, 205], WHITE)).toBeLessThan(3);
    expect(contrast([0, 0, 170], BLACK)).toBeLessThan(3);
    expect(contrast([205, 205, 0], WHITE)).toBeLessThan(3);
  });
});
