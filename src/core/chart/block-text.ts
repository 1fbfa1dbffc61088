import { BLOCK_GLYPHS } from './block-glyphs.ts';

/** Rows in the window: small 3, large 5, big 8 (ASCII: 5, 5, 5), huge 10. */
export type BlockSize = 'small' | 'large' | 'big' | 'huge';

export interface BlockTextOptions {
  readonly size: BlockSize;
  readonly ascii: boolean;
  /** Drawn in a broken shade: the value is old and must not look alive. */
  readonly faded?: boolean;
}

/** One picture element: so many columns wide, so many half rows high. */
const ELEMENT: Readonly<Record<BlockSize, { readonly columns: number; readonly halfRows: number }>> = {
  small: { columns: 1, halfRows: 1 },
  large: { columns: 2, halfRows: 2 },
  big: { columns: 3, halfRows: 3 },
  huge: { columns: 4, halfRows: 4 },
};
const HALVES = [' ', '▀', '▄', '█'] as const;
const FADED_HALVES = [' ', '·', '·', '░'] as const;

/** Words or a figure in block letters; all rows equally long. A character without a picture is left blank. */
export function blockText(words: string, options: BlockTextOptions): readonly string[] {
  const { ascii, faded = false } = options;
  const { columns, halfRows } = ELEMENT[options.size];
  const elements = pictureRows(words.toUpperCase()).map((row) =>
    [...row].map((element) => element.repeat(columns)).join(''),
  );
  if (ascii) {
    const full = faded ? ':' : '#';
    const high = Math.max(1, Math.floor(halfRows / 2));
    return elements.flatMap((row) => new Array<string>(high).fill(row.replaceAll('#', full)));
  }
  const halves = elements.flatMap((row) => new Array<string>(halfRows).fill(row));
  const set = faded ? FADED_HALVES : HALVES;
  const rows: string[] = [];
  for (let top = 0; top < halves.length; top += 2) {
    const [upper, lower] = [halves[top] ?? '', halves[top + 1] ?? ''];
    rows.push(
      [...upper].map((e, i) => set[(e === '#' ? 1 : 0) + (lower[i] === '#' ? 2 : 0)] ?? ' ').join(''),
    );
  }
  return rows;
}

/** Columns that `words` take at a size. */
export function blockTextColumns(words: string, size: BlockSize): number {
  return (pictureRows(words.toUpperCase())[0]?.length ?? 0) * ELEMENT[size].columns;
}

function pictureRows(words: string): readonly string[] {
  const glyphs = [...words].map((letter) => BLOCK_GLYPHS[letter] ?? BLOCK_GLYPHS[' '] ?? []);
  return [0, 1, 2, 3, 4].map((row) => glyphs.map((glyph) => glyph[row] ?? '').join(' '));
}
