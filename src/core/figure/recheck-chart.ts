import { scaleLinear } from 'd3-scale';
import { symbolCircle, symbolSquare, symbolTriangle } from 'd3-shape';
import type { Recheck, RunRecheck } from '../recheck/RecheckResult.ts';
import { RECHECK_CHART_TEXT } from '../text/recheck-report-text.ts';
import { BAND_LOOK } from './band-shapes.ts';
import { legend } from './legend.ts';
import { simulatedShapes } from './overlay-parts.ts';
import type { Box, Picture, Shape } from './Picture.ts';
import { INK } from './picture-svg.ts';
import { plainLine } from './plain-line.ts';
import { plainText } from './plain-text.ts';
import { symbolPath } from './symbol-path.ts';
import { tenth } from './tenth.ts';

export interface RecheckChartInput {
  readonly result: Recheck;
  /** Dwell of the recipe, s. */
  readonly dwellS: number;
  readonly simulated: boolean;
}

const WIDTH = 720;
const BOX: Box = { left: 60, top: 26, width: 590, height: 210 };
const FLOOR = BOX.top + BOX.height;

/** A run's mark: what it is to the re-check, told by shape, not by colour. */
const LOOKS = {
  later: { symbol: symbolCircle, filled: true },
  own: { symbol: symbolSquare, filled: true },
  apart: { symbol: symbolTriangle, filled: false },
} as const;
type Kind = keyof typeof LOOKS;

/** Soak time of each run by its number, the recipe's band and the longest soak time that still leaves the whole hold. */
export function recheckChart({ result, dwellS, simulated }: RecheckChartInput): Picture | null {
  const runs = result.runs.flatMap((one, at) => {
    const soakS = one.run.result.soakTimeS;
    return soakS === null ? [] : [{ number: at + 1, soakS, kind: kindOf(one) }];
  });
  if (runs.length === 0) return null;
  const limitS = dwellS - result.holdS;
  const values = [...runs.map(({ soakS }) => soakS), limitS, ...(result.bandS ?? [])];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(0.5, (high - low) * 0.08);
  const y = scaleLinear([low - room, high + room], [FLOOR, BOX.top]);
  const x = scaleLinear([0.5, result.runs.length + 0.5], [BOX.left, BOX.left + BOX.width]);
  const kinds = (['later', 'own', 'apart'] as const).filter((kind) => runs.some((run) => run.kind === kind));
  const plain = { stroke: INK, strokeWidth: 0 };
  const names = legend(
    [
      ...kinds.map((kind) => ({
        text: RECHECK_CHART_TEXT.kind[kind],
        look: { ...plain, symbol: LOOKS[kind].symbol, filled: LOOKS[kind].filled },
      })),
      ...(result.bandS === null ? [] : [{ text: RECHECK_CHART_TEXT.band(result.bandS), look: BAND_LOOK }]),
    ],
    { left: BOX.left, top: FLOOR + 46, width: BOX.width },
  );
  return {
    width: WIDTH,
    height: FLOOR + 46 + names.height + 6,
    title: RECHECK_CHART_TEXT.title,
    description: RECHECK_CHART_TEXT.description(runs.length, limitS, result.bandS),
    shapes: [
      ...y
        .ticks(6)
        .flatMap((valueS): readonly Shape[] => [
          plainLine(`M${BOX.left} ${tenth(y(valueS))}h${BOX.width}`, '#dcdcdc', 0.7),
          plainText(BOX.left - 7, y(valueS) + 4, String(valueS), 'end', 11),
        ]),
      ...numberTicks(result.runs.length, x),
      ...(result.bandS === null ? [] : bandOver(result.bandS, y)),
      plainLine(`M${BOX.left} ${BOX.top}h${BOX.width}v${BOX.height}h${-BOX.width}Z`, '#555555', 1),
      plainLine(`M${BOX.left} ${tenth(y(limitS))}h${BOX.width}`, INK, 1.8),
      ...limitName(limitS, y(limitS)),
      ...runs.map(({ number, soakS, kind }) =>
        symbolPath(
          LOOKS[kind].symbol,
          { x: x(number), y: y(soakS) },
          { stroke: INK, filled: LOOKS[kind].filled, area: runs.length > 80 ? 14 : 44 },
        ),
      ),
      {
        ...plainText(BOX.left - 42, BOX.top + BOX.height / 2, RECHECK_CHART_TEXT.soakAxis, 'middle', 12),
        turned: -90,
      },
      plainText(BOX.left + BOX.width / 2, FLOOR + 35, RECHECK_CHART_TEXT.runAxis, 'middle', 12),
      ...names.shapes,
      ...simulatedShapes(simulated, { right: BOX.left + BOX.width, floor: FLOOR }),
    ],
  };
}

/** The limit's name on a white ground, for the band may lie behind it. */
function limitName(limitS: number, atY: number): readonly Shape[] {
  const words = RECHECK_CHART_TEXT.limit(limitS);
  const top = atY - 18 < BOX.top ? atY + 3 : atY - 18;
  return [
    {
      kind: 'path',
      d: `M${BOX.left + 4} ${tenth(top)}h${tenth(words.length * 5.5)}v15h${tenth(-words.length * 5.5)}Z`,
      fill: '#ffffff',
    },
    { ...plainText(BOX.left + 8, top + 11, words, 'start', 11.5), bold: true },
  ];
}

function kindOf({ comparable, own }: RunRecheck): Kind {
  if (!comparable) return 'apart';
  return own ? 'own' : 'later';
}

function bandOver([low, high]: readonly [number, number], y: (value: number) => number): readonly Shape[] {
  const strokes: string[] = [];
  for (let x = BOX.left + 2; x < BOX.left + BOX.width; x += 4)
    strokes.push(`M${x} ${tenth(y(low))}V${tenth(y(high))}`);
  return [
    plainLine(strokes.join(''), '#c4c4c4', 1.4),
    plainLine(
      `M${BOX.left} ${tenth(y(low))}h${BOX.width}M${BOX.left} ${tenth(y(high))}h${BOX.width}`,
      '#8a8a8a',
      1,
    ),
  ];
}

function numberTicks(runs: number, x: ReturnType<typeof scaleLinear<number>>): readonly Shape[] {
  return x
    .ticks(Math.min(20, runs))
    .filter((number) => Number.isInteger(number) && number >= 1 && number <= runs)
    .flatMap((number): readonly Shape[] => [
      plainLine(`M${tenth(x(number))} ${FLOOR}v4`, '#555555', 1),
      plainText(x(number), FLOOR + 17, String(number), 'middle', 11),
    ]);
}
