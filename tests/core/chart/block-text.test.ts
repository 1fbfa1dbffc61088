import { describe, expect, it } from 'vitest';
import { BLOCK_GLYPHS } from '../../../src/core/chart/block-glyphs.ts';
import { blockText, blockTextColumns } from '../../../src/core/chart/block-text.ts';
import { STATE_WORD } from '../../../src/core/text/screen-text.ts';

describe('blockText', () => {
  it('gives every letter and figure a picture of its own', () => {
    const pictures = Object.values(BLOCK_GLYPHS).map((rows) => rows.join('\n'));
    expect(new Set(pictures).size + 2).toBe(pictures.length); // 0 is drawn like O, 5 like S
    for (const rows of Object.values(BLOCK_GLYPHS)) {
      expect(rows.length).toBe(5);
      expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    }
  });

  it.each([
    ['small', false, 3],
    ['large', false, 5],
    ['big', false, 8],
    ['huge', false, 10],
    ['small', true, 5],
    ['large', true, 5],
  ] as const)('%s (ASCII %s) is %i rows high and as wide as announced', (size, ascii, rows) => {
    const drawn = blockText('350 HOLD', { size, ascii });
    expect(drawn.length).toBe(rows);
    expect(new Set(drawn.map((row) => row.length))).toEqual(new Set([blockTextColumns('350 HOLD', size)]));
    if (ascii) expect(drawn.join('')).toMatch(/^[ #]+$/);
  });

  it('draws an old value in another shade, not only in another colour', () => {
    expect(blockText('350', { size: 'large', ascii: false, faded: true }).join('')).toMatch(/^[ ░·]+$/u);
    expect(blockText('350', { size: 'large', ascii: true, faded: true }).join('')).toMatch(/^[ :]+$/);
  });

  it('has room for every state word beside the figure in 80 columns', () => {
    for (const words of Object.values(STATE_WORD)) {
      for (const word of words) expect(blockTextColumns(word, 'small')).toBeLessThanOrEqual(45);
      expect(words.length).toBeLessThanOrEqual(2);
    }
  });
});
