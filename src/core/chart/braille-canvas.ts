/** Dots of the braille cell (Unicode block 2800–28FF), 2 across and 4 down: bit for [down][across]. */
const DOT_BITS = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const;

export interface DotCanvas {
  readonly columns: number;
  readonly rows: number;
  /** Dots across and down. */
  readonly across: number;
  readonly down: number;
  /** Sets a dot for trace number `owner`; the first owner of a cell keeps it. Outside the canvas: nothing. */
  set(x: number, y: number, owner: number): void;
  /** Bits of the cell's dots, 0 = empty. */
  bits(column: number, row: number): number;
  /** Owner of the cell, −1 = none. */
  owner(column: number, row: number): number;
}

/** A drawing surface of `columns` × `rows` cells. Braille: 2 × 4 dots a cell; plain: one dot a cell, or `plainDown` dots under each other. */
export function brailleCanvas(columns: number, rows: number, ascii: boolean, plainDown = 1): DotCanvas {
  const cells = new Uint8Array(columns * rows);
  const owners = new Int8Array(columns * rows).fill(-1);
  const [perColumn, perRow] = ascii ? [1, plainDown] : [2, 4];
  const across = columns * perColumn;
  const down = rows * perRow;
  return {
    columns,
    rows,
    across,
    down,
    set(x, y, owner) {
      if (x < 0 || y < 0 || x >= across || y >= down) return;
      const cell = Math.floor(y / perRow) * columns + Math.floor(x / perColumn);
      const bit = ascii ? 1 << (y % perRow) : (DOT_BITS[y % 4]?.[x % 2] ?? 0);
      cells[cell] = (cells[cell] ?? 0) | bit;
      if (owners[cell] === -1) owners[cell] = owner;
    },
    bits: (column, row) => cells[row * columns + column] ?? 0,
    owner: (column, row) => owners[row * columns + column] ?? -1,
  };
}
