import type { PlatenSurvey } from './PlatenSurvey.ts';

const COLUMNS = 49;
const ROWS = 13;
/** A character is about twice as high as wide. */
const CELL_SHAPE = 2;

export interface SurveyMapOptions {
  readonly unit: 'F' | 'C';
  readonly ascii: boolean;
}

/**
 * The platen seen from above, front edge below: at each probe's place its difference from the mean in °F or °C, the
 * hottest marked ▲, the coldest ▼. Null where a place is not known.
 */
export function drawSurveyMap(
  survey: PlatenSurvey,
  { unit, ascii }: SurveyMapOptions,
): readonly string[] | null {
  const places = survey.probes.map((probe) => probe.place);
  if (places.some((place) => place === null)) return null;
  const x = scale(places.map((place) => place!.xMm));
  const y = scale(places.map((place) => place!.yMm));
  const columns = Math.max(21, Math.min(COLUMNS, Math.round((COLUMNS * x.span) / Math.max(x.span, y.span))));
  const rows = Math.max(
    5,
    Math.min(ROWS * CELL_SHAPE, Math.round((columns / CELL_SHAPE) * (y.span / x.span))),
  );
  const grid = Array.from({ length: Math.min(rows, 25) }, () => new Array<string>(columns).fill(' '));
  survey.probes.forEach((probe, index) => {
    const sign =
      probe === survey.hottest ? (ascii ? '^' : '▲') : probe === survey.coldest ? (ascii ? 'v' : '▼') : '';
    const text = `${sign}${differenceFigure(probe.meanC - survey.meanC, unit)}`;
    const column = Math.round(x.share(places[index]!.xMm) * (columns - 1));
    const row = Math.round((1 - y.share(places[index]!.yMm)) * (grid.length - 1));
    place(grid, row, column, text);
  });
  const [corner, across, down] = ascii ? ['+', '-', '|'] : ['·', '·', '·'];
  const edge = `${corner}${across.repeat(columns)}${corner}`;
  return [edge, ...grid.map((row) => `${down}${row.join('')}${down}`), edge];
}

function scale(values: readonly number[]): { span: number; share: (value: number) => number } {
  const least = Math.min(...values);
  const most = Math.max(...values);
  const margin = Math.max(1, (most - least) * 0.15);
  const span = most - least + 2 * margin;
  return { span, share: (value) => (value - least + margin) / span };
}

/** Writes a text about a column, on the first free row from the wanted one on. */
function place(grid: string[][], row: number, column: number, text: string): void {
  const width = grid[0]!.length;
  const from = Math.max(0, Math.min(width - text.length, column - Math.floor(text.length / 2)));
  const free = (at: number) =>
    grid[at]?.slice(Math.max(0, from - 1), from + text.length + 1).every((cell) => cell === ' ') === true;
  const found = [0, 1, -1, 2, -2, 3, -3].map((by) => row + by).find(free);
  if (found === undefined) return;
  [...text].forEach((character, i) => {
    grid[found]![from + i] = character;
  });
}

function differenceFigure(differenceC: number, unit: 'F' | 'C'): string {
  const value = unit === 'F' ? differenceC * 1.8 : differenceC;
  const text = Math.abs(value).toFixed(1);
  return Number(text) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
}
