import { scaleLinear } from 'd3-scale';
import { betweenPlaces, placeScale } from '../survey/between-places.ts';
import type { PlatenSurvey } from '../survey/PlatenSurvey.ts';
import { SURVEY_MAP_TEXT } from '../text/survey-report-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import { levelLines } from './level-lines.ts';
import { simulatedShapes } from './overlay-parts.ts';
import type { Box, Picture, Shape } from './Picture.ts';
import { INK } from './picture-svg.ts';
import { placeLabels } from './place-labels.ts';
import { plainText } from './plain-text.ts';
import { tenth } from './tenth.ts';

export interface SurveyMapInput {
  readonly survey: PlatenSurvey;
  readonly unit: TemperatureUnit;
  readonly simulated: boolean;
}

const WIDTH = 720;
const MOST_SIDE = 400;
const LEFT = 70;
const TOP = 14;
/** Cells along each side. */
const CELLS = 72;
/** Coldest to hottest, light enough that black figures stand on each. */
const SHADES = ['#ffffff', '#ebebeb', '#d6d6d6', '#c0c0c0'] as const;
const LEVELS = SHADES.length - 1;

/**
 * A platen from above, front edge below: each probe's temperature and its difference from the mean written at its place,
 * four steps of grey from coldest to hottest with level lines between. Null where a place is not known.
 */
export function surveyMap({ survey, unit, simulated }: SurveyMapInput): Picture | null {
  const spots = survey.probes.flatMap((probe) => (probe.place === null ? [] : [{ probe, ...probe.place }]));
  if (spots.length < survey.probes.length) return null;
  const [acrossMm, deepMm] = [
    placeScale(spots.map(({ xMm }) => xMm)),
    placeScale(spots.map(({ yMm }) => yMm)),
  ];
  const perMm = Math.min(MOST_SIDE / acrossMm.span, MOST_SIDE / deepMm.span);
  const box: Box = { left: LEFT, top: TOP, width: acrossMm.span * perMm, height: deepMm.span * perMm };
  const x = scaleLinear([acrossMm.at(0), acrossMm.at(1)], [box.left, box.left + box.width]);
  const y = scaleLinear([deepMm.at(0), deepMm.at(1)], [box.top + box.height, box.top]);
  const grid = Array.from({ length: CELLS + 1 }, (_, row) =>
    Array.from({ length: CELLS + 1 }, (_, column) =>
      betweenPlaces(spots, acrossMm.at(column / CELLS), deepMm.at(1 - row / CELLS)),
    ),
  );
  const levelC = (step: number) => survey.coldest.meanC + (survey.spreadC * step) / SHADES.length;
  const flat = survey.spreadC === 0;
  return {
    width: WIDTH,
    height: Math.max(box.top + box.height + 48, 250),
    title: SURVEY_MAP_TEXT.title,
    description: SURVEY_MAP_TEXT.description(survey, unit),
    shapes: [
      ...(flat ? [] : shading(grid, box, survey)),
      ...(flat
        ? []
        : Array.from(
            { length: LEVELS },
            (_, step): Shape => ({
              kind: 'path',
              d: levelLines(grid, levelC(step + 1), box),
              stroke: '#6a6a6a',
              strokeWidth: 0.9,
              ...(step === 1 ? {} : { dash: step === 0 ? [2, 3] : [7, 3] }),
            }),
          )),
      {
        kind: 'path',
        d: `M${tenth(box.left)} ${tenth(box.top)}h${tenth(box.width)}v${tenth(box.height)}h${tenth(-box.width)}Z`,
        stroke: INK,
        strokeWidth: 1.2,
      },
      ...axes(box, x, y),
      ...placeLabels(
        spots.map(({ probe, xMm, yMm }) => ({
          x: x(xMm),
          y: y(yMm),
          lines: [
            `${probe === survey.hottest ? '▲ ' : probe === survey.coldest ? '▼ ' : ''}${SURVEY_MAP_TEXT.value(probe.meanC, unit)}`,
            SURVEY_MAP_TEXT.fromMean(probe.meanC - survey.meanC, unit),
          ],
        })),
        box,
      ),
      ...figures(survey, unit, box),
      ...simulatedShapes(simulated, { right: WIDTH - 20, floor: box.top + box.height }),
    ],
  };
}

function shading(grid: readonly (readonly number[])[], box: Box, survey: PlatenSurvey): readonly Shape[] {
  const [wide, high] = [box.width / CELLS, box.height / CELLS];
  const paths: string[] = SHADES.map(() => '');
  for (let row = 0; row < CELLS; row++) {
    // Cells of one shade beside each other are one rectangle.
    let from = 0;
    const shadeAt = (column: number): number => {
      const share = (cellMean(grid, row, column) - survey.coldest.meanC) / survey.spreadC;
      return Math.max(0, Math.min(SHADES.length - 1, Math.floor(share * SHADES.length)));
    };
    for (let column = 1; column <= CELLS; column++) {
      const shade = shadeAt(from);
      if (column < CELLS && shadeAt(column) === shade) continue;
      paths[shade] +=
        `M${tenth(box.left + from * wide)} ${tenth(box.top + row * high)}h${tenth((column - from) * wide)}v${tenth(high + 0.3)}h${tenth((from - column) * wide)}Z`;
      from = column;
    }
  }
  return SHADES.flatMap((fill, at): readonly Shape[] =>
    at === 0 || paths[at] === '' ? [] : [{ kind: 'path', d: paths[at] as string, fill }],
  );
}

const cellMean = (grid: readonly (readonly number[])[], row: number, column: number): number =>
  (grid[row]![column]! + grid[row]![column + 1]! + grid[row + 1]![column]! + grid[row + 1]![column + 1]!) / 4;

type Scale = ReturnType<typeof scaleLinear<number>>;

function axes(box: Box, x: Scale, y: Scale): readonly Shape[] {
  const floor = box.top + box.height;
  return [
    ...x
      .ticks(6)
      .flatMap((mm): readonly Shape[] => [
        { kind: 'path', d: `M${tenth(x(mm))} ${tenth(floor)}v4`, stroke: '#555555' },
        plainText(x(mm), floor + 16, String(mm), 'middle', 11),
      ]),
    ...y
      .ticks(6)
      .flatMap((mm): readonly Shape[] => [
        { kind: 'path', d: `M${tenth(box.left)} ${tenth(y(mm))}h-4`, stroke: '#555555' },
        plainText(box.left - 7, y(mm) + 4, String(mm), 'end', 11),
      ]),
    plainText(box.left + box.width / 2, floor + 34, SURVEY_MAP_TEXT.acrossAxis, 'middle', 12),
    {
      ...plainText(box.left - 48, box.top + box.height / 2, SURVEY_MAP_TEXT.deepAxis, 'middle', 12),
      turned: -90,
    },
  ];
}

/** Figures beside the map, and what the shades mean. */
function figures(survey: PlatenSurvey, unit: TemperatureUnit, box: Box): readonly Shape[] {
  const left = box.left + box.width + 26;
  const lines = SURVEY_MAP_TEXT.figures(survey, unit);
  const below = box.top + 22 + lines.length * 17;
  return [
    ...lines.map((line, at) => plainText(left, box.top + 12 + at * 17, line, 'start', 12)),
    ...(survey.spreadC === 0
      ? []
      : SHADES.flatMap((fill, at): readonly Shape[] => {
          const y = below + (SHADES.length - 1 - at) * 20;
          const from = survey.coldest.meanC + (survey.spreadC * at) / SHADES.length;
          const to = survey.coldest.meanC + (survey.spreadC * (at + 1)) / SHADES.length;
          return [
            { kind: 'path', d: `M${tenth(left)} ${y}h26v15h-26Z`, fill, stroke: '#6a6a6a', strokeWidth: 0.8 },
            plainText(left + 34, y + 12, SURVEY_MAP_TEXT.step(from, to, unit), 'start', 11.5),
          ];
        })),
  ];
}
