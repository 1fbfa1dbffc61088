/**
 * Where the columns of rows parted by spaces end, if they have a fixed width: between the rightmost end of a column and the
 * leftmost start of the next stands a space in every whole row. Undefined where columns run into each other.
 */
export function fixedWidthCuts(rows: readonly string[], columnCount: number): readonly number[] | undefined {
  const ends: number[] = [];
  const starts: number[] = [];
  for (const row of rows) {
    const words = wordsOf(row);
    if (row.includes('\t') || words.length !== columnCount) continue;
    words.forEach(({ from, to }, at) => {
      ends[at] = Math.max(ends[at] ?? 0, to);
      starts[at] = Math.min(starts[at] ?? from, from);
    });
  }
  if (ends.length !== columnCount) return undefined;
  const cuts = ends.slice(0, -1);
  return cuts.every((cut, at) => cut < (starts[at + 1] ?? 0)) ? cuts : undefined;
}

/** The cells of a row of fixed width, empty where nothing stands; undefined where a word stands across two columns. */
export function fixedWidthCells(row: string, cuts: readonly number[]): readonly string[] | undefined {
  const cells = Array.from({ length: cuts.length + 1 }, () => '');
  for (const { from, to, word } of wordsOf(row)) {
    const after = cuts.findIndex((cut) => from < cut);
    const column = after < 0 ? cuts.length : after;
    if (column < cuts.length && to > (cuts[column] ?? to)) return undefined;
    if (cells[column] !== '') return undefined;
    cells[column] = word;
  }
  return cells;
}

function wordsOf(
  row: string,
): readonly { readonly from: number; readonly to: number; readonly word: string }[] {
  return [...row.matchAll(/\S+/g)].map((found) => ({
    from: found.index,
    to: found.index + found[0].length,
    word: found[0],
  }));
}
