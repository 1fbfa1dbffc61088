import { scaleLinear } from 'd3-scale';
import { line as linePath } from 'd3-shape';
import type { DwellAtTarget } from '../recheck/dwell-at-target.ts';
import { WHAT_IF_CHART_TEXT } from '../text/recheck-report-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import { temperatureCToF } from '../units/temperature-c-to-f.ts';
import { legend } from './legend.ts';
import { lineLook } from './line-look.ts';
import { simulatedShapes } from './overlay-parts.ts';
import type { Box, PathShape, Picture, Shape } from './Picture.ts';
import { plainLine } from './plain-line.ts';
import { plainText } from './plain-text.ts';
import { symbolPath } from './symbol-path.ts';
import { tenth } from './tenth.ts';

export interface WhatIfChartInput {
  readonly rows: readonly DwellAtTarget[];
  readonly unit: TemperatureUnit;
  readonly simulated: boolean;
}

const WIDTH = 720;
const BOX: Box = { left: 60, top: 12, width: 590, height: 230 };
const FLOOR = BOX.top + BOX.height;

/** The rules drawn, each with its look by shape and dash. */
const RULES = [
  ['mean', 'meanDwellS', 0],
  ['nextRun', 'nextRunDwellS', 1],
  ['tolerance', 'toleranceDwellS', 2],
] as const;

/** Dwell at several targets by the mean rule, the next run and most cycles, hatched from the mean to the next run. Null where none gives a dwell. */
export function whatIfChart({ rows, unit, simulated }: WhatIfChartInput): Picture | null {
  const sorted = rows.toSorted((a, b) => a.targetC - b.targetC);
  const values = sorted.flatMap((row) => RULES.flatMap(([, key]) => row[key] ?? []));
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (values.length === 0 || first === undefined || last === undefined) return null;
  const shown = (c: number) => (unit === 'F' ? temperatureCToF(c) : c);
  const side = Math.max(2, (shown(last.targetC) - shown(first.targetC)) * 0.06);
  const x = scaleLinear(
    [shown(first.targetC) - side, shown(last.targetC) + side],
    [BOX.left, BOX.left + BOX.width],
  );
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(1, (high - low) * 0.08);
  const y = scaleLinear([low - room, high + room], [FLOOR, BOX.top]);
  const lines = RULES.flatMap(([name, key, look]) => {
    const points = sorted.flatMap((row): readonly (readonly [number, number])[] => {
      const value = row[key];
      return value === null ? [] : [[x(shown(row.targetC)), y(value)]];
    });
    return points.length === 0 ? [] : [{ name, points, look: lineLook(look) }];
  });
  const names = legend(
    lines.map(({ name, look }) => ({ text: WHAT_IF_CHART_TEXT[name], look })),
    { left: BOX.left, top: FLOOR + 46, width: BOX.width },
  );
  const draw = linePath<readonly [number, number]>()
    .x(([at]) => at)
    .y(([, at]) => at)
    .digits(1);
  return {
    width: WIDTH,
    height: FLOOR + 46 + names.height + 6,
    title: WHAT_IF_CHART_TEXT.title,
    description: WHAT_IF_CHART_TEXT.description(sorted.length),
    shapes: [
      ...y
        .ticks(6)
        .flatMap((valueS): readonly Shape[] => [
          plainLine(`M${BOX.left} ${tenth(y(valueS))}h${BOX.width}`, '#dcdcdc', 0.7),
          plainText(BOX.left - 7, y(valueS) + 4, String(valueS), 'end', 11),
        ]),
      ...x
        .ticks(8)
        .flatMap((value): readonly Shape[] => [
          plainLine(`M${tenth(x(value))} ${BOX.top}v${BOX.height}`, '#dcdcdc', 0.7),
          plainText(x(value), FLOOR + 17, String(value), 'middle', 11),
        ]),
      hatched(sorted, (c) => x(shown(c)), y),
      plainLine(`M${BOX.left} ${BOX.top}h${BOX.width}v${BOX.height}h${-BOX.width}Z`, '#555555', 1),
      ...lines.flatMap(({ points, look: { symbol, ...look } }): readonly Shape[] => [
        { kind: 'path', d: draw([...points]) ?? '', ...look },
        ...points.map(([atX, atY]) => symbolPath(symbol, { x: atX, y: atY }, { stroke: look.stroke })),
      ]),
      {
        ...plainText(BOX.left - 42, BOX.top + BOX.height / 2, WHAT_IF_CHART_TEXT.dwellAxis, 'middle', 12),
        turned: -90,
      },
      plainText(BOX.left + BOX.width / 2, FLOOR + 35, WHAT_IF_CHART_TEXT.targetAxis(unit), 'middle', 12),
      ...names.shapes,
      ...simulatedShapes(simulated, { right: BOX.left + BOX.width, floor: FLOOR }),
    ],
  };
}

/** Upright strokes between mean and next run, where both are known on both sides. */
function hatched(
  rows: readonly DwellAtTarget[],
  x: (targetC: number) => number,
  y: (dwellS: number) => number,
): PathShape {
  const strokes = rows.flatMap((row, at) => {
    const next = rows[at + 1];
    const [from, to] = [ends(row, y), next === undefined ? null : ends(next, y)];
    if (next === undefined || from === null || to === null) return [];
    const [left, right] = [x(row.targetC), x(next.targetC)];
    const count = Math.max(1, Math.round((right - left) / 4));
    return Array.from({ length: count }, (_, step) => {
      const share = step / count;
      const between = (a: number, b: number) => tenth(a + (b - a) * share);
      return `M${between(left, right)} ${between(from[0], to[0])}V${between(from[1], to[1])}`;
    });
  });
  return { kind: 'path', d: strokes.join(''), stroke: '#c4c4c4', strokeWidth: 1.4 };
}

function ends({ meanDwellS, nextRunDwellS }: DwellAtTarget, y: (dwellS: number) => number) {
  return meanDwellS === null || nextRunDwellS === null ? null : ([y(meanDwellS), y(nextRunDwellS)] as const);
}
