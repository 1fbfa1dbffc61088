import { brailleCanvas } from './braille-canvas.ts';
import type { ChartSpec } from './ChartSpec.ts';
import { createCells } from './create-cells.ts';
import { drawTrace } from './draw-trace.ts';
import { niceTicks } from './nice-ticks.ts';
import type { SegmentRole, StyledRow } from './StyledRow.ts';
import { shownTemperature, shownToC } from './show-temperature.ts';
import { timeTicks } from './time-ticks.ts';

const LABEL_COLUMNS = 5;
const END_COLUMNS = 2;
const TARGET_WORD = ' target ';
/** In ASCII a chart no higher than this draws its first trace in three levels a row; its letter stands at its end. */
const LOW_ROWS = 9;
/** By the dots of a cell, 1 = upper third, 2 = middle, 4 = lower; what runs through all of it is the letter. */
const LEVELS: Readonly<Record<number, string>> = { 1: "'", 2: '~', 3: "'", 4: '.', 6: '.' };

/**
 * Draws temperature against time into exactly `rows` rows of `columns` characters: unit and labels of the
 * temperature axis on the left, time from `zeroS` below, the target as a horizontal line named where no trace hides it, marks as vertical
 * lines with their word, faults as × on the lowest row. Gaps stay open. Empty when smaller than 20 × 5.
 */
export function drawChart(spec: ChartSpec): readonly StyledRow[] {
  if (spec.columns < 20 || spec.rows < 5 || !(spec.highC > spec.lowC) || !(spec.toS > spec.fromS)) return [];
  const columns = spec.columns - LABEL_COLUMNS - 1 - END_COLUMNS;
  const rows = spec.rows - 2;
  const left = LABEL_COLUMNS + 1;
  const cells = createCells(spec.columns, spec.rows);
  const columnOf = (timeS: number) =>
    left + Math.round(((timeS - spec.fromS) / (spec.toS - spec.fromS)) * (columns - 1));
  const rowOf = (c: number) => 1 + Math.round((1 - (c - spec.lowC) / (spec.highC - spec.lowC)) * (rows - 1));
  const inside = (row: number) => row >= 1 && row <= rows;

  drawBand(spec, cells, columnOf, rowOf, rows);
  drawAxes(spec, cells, { left, columns, rows, columnOf, rowOf });
  if (spec.targetC !== null && inside(rowOf(spec.targetC))) {
    const row = rowOf(spec.targetC);
    for (let column = left; column < left + columns; column++)
      cells.put(column, row, spec.ascii ? '-' : '─', 'target');
    cells.write(
      0,
      row,
      `${Math.round(shownTemperature(spec.targetC, spec.unit))}`.padStart(LABEL_COLUMNS),
      'target',
    );
  }
  const marks = spec.marks.filter((mark) => mark.timeS >= spec.fromS && mark.timeS <= spec.toS);
  for (const mark of marks) {
    for (let row = 1; row <= rows; row++)
      cells.put(columnOf(mark.timeS), row, spec.ascii ? ':' : '┊', 'mark');
  }

  const low = spec.ascii && spec.rows <= LOW_ROWS;
  const canvas = brailleCanvas(columns, rows, spec.ascii, low ? 3 : 1);
  const ends = spec.traces.map((trace, owner) => drawTrace(canvas, spec, trace, owner));
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const bits = canvas.bits(column, row);
      if (bits === 0) continue;
      const trace = spec.traces[canvas.owner(column, row)];
      const letter = trace?.letter.toLowerCase() ?? '*';
      const plain = low && trace === spec.traces[0] ? (LEVELS[bits] ?? letter) : letter;
      const text = spec.ascii ? plain : String.fromCharCode(0x2800 + bits);
      cells.put(left + column, row + 1, text, trace?.role ?? 'plain');
    }
  }
  if (spec.targetC !== null && inside(rowOf(spec.targetC))) {
    const row = rowOf(spec.targetC);
    const taken = new Set(marks.map((mark) => columnOf(mark.timeS) - left));
    const isFree = (column: number) => canvas.bits(column, row - 1) === 0 && !taken.has(column);
    cells.write(left + wordColumn(columns, TARGET_WORD.length, isFree), row, TARGET_WORD, 'target');
  }
  writeEndLetters(spec, cells, ends, spec.ascii ? canvas.down / rows : 4, rows);
  for (const trace of spec.traces) {
    for (const point of trace.points) {
      if (point.faulted && point.toS >= spec.fromS && point.fromS <= spec.toS) {
        cells.put(columnOf(Math.min(point.toS, spec.toS)), rows, spec.ascii ? 'x' : '×', 'fault');
      }
    }
  }
  let free = left;
  for (const mark of [...marks].sort((a, b) => a.timeS - b.timeS)) {
    const room = spec.columns - mark.label.length;
    const column = Math.max(free, Math.min(columnOf(mark.timeS), room));
    if (column > room) continue;
    cells.write(column, 0, mark.label, 'mark');
    free = column + mark.label.length + 1;
  }
  return cells.toRows();
}

type Cells = ReturnType<typeof createCells>;

/** Rightmost place for a word where no trace and no mark runs through it; the right end where there is none. */
function wordColumn(columns: number, letters: number, isFree: (column: number) => boolean): number {
  for (let from = columns - letters; from >= 0; from--) {
    let free = 0;
    while (free < letters && isFree(from + free)) free++;
    if (free === letters) return from;
  }
  return columns - letters;
}

function drawAxes(
  spec: ChartSpec,
  cells: Cells,
  at: {
    readonly left: number;
    readonly columns: number;
    readonly rows: number;
    readonly columnOf: (timeS: number) => number;
    readonly rowOf: (temperatureC: number) => number;
  },
): void {
  const [upright, corner, level, tickMark] = spec.ascii ? ['|', '+', '-', '+'] : ['│', '└', '─', '┴'];
  cells.write(
    0,
    0,
    `${spec.unit === 'F' ? (spec.ascii ? 'F' : '°F') : spec.ascii ? 'C' : '°C'}`.padStart(LABEL_COLUMNS),
    'axis',
  );
  for (let row = 1; row <= at.rows; row++) cells.put(at.left - 1, row, upright, 'axis');
  const bottom = at.rows + 1;
  cells.put(at.left - 1, bottom, corner, 'axis');
  for (let column = at.left; column < at.left + at.columns; column++)
    cells.put(column, bottom, level, 'axis');
  const [low, high] = [shownTemperature(spec.lowC, spec.unit), shownTemperature(spec.highC, spec.unit)];
  for (const tick of niceTicks(low, high, Math.max(2, Math.floor(at.rows / 2)))) {
    const row = at.rowOf(shownToC(tick, spec.unit));
    cells.write(0, row, `${tick}`.padStart(LABEL_COLUMNS), 'axis');
  }
  const from = spec.fromS - spec.zeroS;
  let free = 0;
  for (const tick of timeTicks(from, spec.toS - spec.zeroS, Math.floor(at.columns / 9))) {
    const column = at.columnOf(tick + spec.zeroS);
    cells.put(column, bottom, tickMark, 'axis');
    const label = ` ${tickLabel(tick)} `;
    const start = Math.min(column + 1, spec.columns - label.length);
    if (start < free || (start <= column && tick !== 0)) continue;
    cells.write(start, bottom, label, 'axis');
    free = start + label.length + 1;
  }
}

function tickLabel(seconds: number): string {
  const whole = Math.abs(seconds);
  if (whole < 120 && seconds % 60 !== 0) return `${seconds} s`;
  return seconds === 0 ? '0 s' : seconds % 60 === 0 ? `${seconds / 60} min` : `${seconds} s`;
}

function drawBand(
  spec: ChartSpec,
  cells: Cells,
  columnOf: (timeS: number) => number,
  rowOf: (temperatureC: number) => number,
  rows: number,
): void {
  for (const point of spec.band) {
    if (point.timeS < spec.fromS || point.timeS > spec.toS) continue;
    for (let row = Math.max(1, rowOf(point.highC)); row <= Math.min(rows, rowOf(point.lowC)); row++) {
      cells.put(columnOf(point.timeS), row, spec.ascii ? '.' : '░', 'band');
    }
  }
}

function writeEndLetters(
  spec: ChartSpec,
  cells: Cells,
  ends: readonly (number | null)[],
  dotsPerRow: number,
  rows: number,
): void {
  const taken = new Set<number>();
  spec.traces.forEach((trace, index) => {
    const end = ends[index];
    if (end === null || end === undefined) return;
    const wanted = Math.min(rows, Math.max(1, 1 + Math.floor(end / dotsPerRow)));
    const row = [wanted, wanted + 1, wanted - 1, wanted + 2, wanted - 2].find(
      (r) => r >= 1 && r <= rows && !taken.has(r),
    );
    if (row === undefined) return;
    taken.add(row);
    cells.put(spec.columns - 1, row, trace.letter, trace.role as SegmentRole);
  });
}
