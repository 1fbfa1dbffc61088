import { betweenPlaces, placeScale } from './between-places.ts';
import type { PlatenSurvey, SurveyProbe } from './PlatenSurvey.ts';

const COLUMNS = 37;
const LEAST_COLUMNS = 21;
const LEAST_ROWS = 5;
const MOST_ROWS = 25;
/** A character is about twice as high as wide. */
const CELL_SHAPE = 2;
const SHADES = { drawn: [' ', '░', '▒', '▓'], ascii: [' ', '.', ':', '#'] } as const;

export interface SurveyMapOptions {
  readonly unit: 'F' | 'C';
  readonly ascii: boolean;
}

export interface SurveyMap {
  readonly lines: readonly string[];
  /** Probes whose figures found no room beside their neighbours. */
  readonly leftOut: readonly SurveyProbe[];
}

/**
 * The platen seen from above, front edge below: at each probe's place its difference from the mean in °F or °C, the
 * hottest marked ▲, the coldest ▼. The shade between, four steps from coldest to hottest, is weighted by the inverse
 * square of the distance to the probes (Shepard 1968, from memory): a guide for the eye, not a measurement. Null where a place is not known.
 */
export function drawSurveyMap(survey: PlatenSurvey, { unit, ascii }: SurveyMapOptions): SurveyMap | null {
  const spots = survey.probes.flatMap((probe) => (probe.place === null ? [] : [{ probe, ...probe.place }]));
  if (spots.length < survey.probes.length) return null;
  const x = placeScale(spots.map((spot) => spot.xMm));
  const y = placeScale(spots.map((spot) => spot.yMm));
  const columns = within(LEAST_COLUMNS, COLUMNS, (COLUMNS * x.span) / Math.max(x.span, y.span));
  const rows = within(LEAST_ROWS, MOST_ROWS, (columns / CELL_SHAPE) * (y.span / x.span));
  const shades = ascii ? SHADES.ascii : SHADES.drawn;
  const cells = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => {
      const atC = betweenPlaces(spots, x.at(column / (columns - 1)), y.at(1 - row / (rows - 1)));
      const share = survey.spreadC === 0 ? 0 : (atC - survey.coldest.meanC) / survey.spreadC;
      return shades[within(0, shades.length - 1, Math.floor(share * shades.length))]!;
    }),
  );
  const taken = cells.map((row) => row.map(() => false));
  const leftOut = spots.flatMap(({ probe, xMm, yMm }) => {
    const mark = probe === survey.hottest ? 0 : probe === survey.coldest ? 1 : null;
    const sign = mark === null ? '' : (ascii ? '^v' : '▲▼')[mark]!;
    const text = ` ${sign}${differenceFigure(probe.meanC - survey.meanC, unit, ascii)} `;
    const row = Math.round((1 - y.share(yMm)) * (rows - 1));
    return write(cells, taken, row, Math.round(x.share(xMm) * (columns - 1)), text) ? [] : [probe];
  });
  const [corner, across, down] = ascii ? ['+', '-', '|'] : ['·', '·', '·'];
  const edge = `${corner}${across.repeat(columns)}${corner}`;
  return { lines: [edge, ...cells.map((row) => `${down}${row.join('')}${down}`), edge], leftOut };
}

/** Writes a text about a column, on the nearest row with room; false when there is none within three rows. */
function write(cells: string[][], taken: boolean[][], row: number, column: number, text: string): boolean {
  const width = cells[0]!.length;
  const from = within(0, width - text.length, column - Math.floor(text.length / 2));
  const free = (at: number) => taken[at]?.slice(from, from + text.length).every((one) => !one) === true;
  const found = [0, 1, -1, 2, -2, 3, -3].map((by) => row + by).find(free);
  if (found === undefined) return false;
  [...text].forEach((character, i) => {
    cells[found]![from + i] = character;
    taken[found]![from + i] = true;
  });
  return true;
}

function within(least: number, most: number, value: number): number {
  return Math.max(least, Math.min(most, Math.round(value)));
}

function differenceFigure(differenceC: number, unit: 'F' | 'C', ascii: boolean): string {
  const value = unit === 'F' ? differenceC * 1.8 : differenceC;
  const text = Math.abs(value).toFixed(1);
  return Number(text) === 0 ? text : `${value > 0 ? '+' : ascii ? '-' : '−'}${text}`;
}
