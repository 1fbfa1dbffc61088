import type { SegmentRole } from '../../core/chart/StyledRow.ts';

/** How many colours are used: none (weight, underline and reverse only), the 16 of every terminal, or the 256 of xterm. */
export type Colours = 'none' | '16' | '256';

/**
 * SGR codes of each role, one row a role. The background is the person's, light or dark, and is not asked for: no role
 * sets one, and letters take a colour only where it is read on both.
 * - 256: numbers of xterm's cube and greys, whose values are fixed, all at least 4 : 1 on black and on white
 *   (WCAG 2.2, 1.4.3; the most that any colour reaches on both at once is 4.58 : 1).
 * - 16: every terminal paints these as it likes; green and cyan vanish on white, blue on black, yellow and white on
 *   white. Only red, bold, and magenta are left (at least 3 : 1 on both in the common palettes).
 * No role is told apart by colour alone: letters, words, line styles and weights differ as well.
 */
const PALETTE: Readonly<Record<SegmentRole, readonly [none: string, of16: string, of256: string]>> = {
  plain: ['', '', ''],
  quiet: ['2', '2', '38;5;243'],
  strong: ['1', '1', '1'],
  axis: ['2', '2', '38;5;243'],
  target: ['', '35', '38;5;133'],
  mark: ['', '', '38;5;31'],
  'bond-line': ['1', '1;31', '1;38;5;161'],
  'bond-line-inner': ['', '1;31', '38;5;130'],
  'bond-line-outer': ['', '35', '38;5;163'],
  'upper-platen': ['', '', '38;5;63'],
  'lower-platen': ['', '', '38;5;30'],
  ambient: ['2', '2', '38;5;243'],
  band: ['2', '2', '38;5;243'],
  fault: ['1;7', '1;31', '1;38;5;161'],
  good: ['1', '1', '1;38;5;28'],
  caution: ['1;4', '35', '1;38;5;130'],
  key: ['7', '7', '7'],
  flash: ['1;7', '1;7', '1;7'],
};

const PLACE: Readonly<Record<Colours, 0 | 1 | 2>> = { none: 0, '16': 1, '256': 2 };

/** SGR codes of a role, parted by semicolons; '' for none. */
export function roleStyle(role: SegmentRole, colours: Colours): string {
  return PALETTE[role][PLACE[colours]];
}
