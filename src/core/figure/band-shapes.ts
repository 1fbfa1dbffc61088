import type { ChartBandPoint } from '../chart/ChartSpec.ts';
import type { PathShape } from './Picture.ts';
import type { PlotFrame } from './plot-frame.ts';
import { tenth } from './tenth.ts';

const STROKE = '#8a8a8a';
/** Upright strokes this far apart fill the band, in units of the picture. */
const APART = 4;

/** A band as upright strokes between its lowest and highest, with its two edges: told apart without colour. */
export function bandShapes(band: readonly ChartBandPoint[], frame: PlotFrame): readonly PathShape[] {
  if (band.length < 2) return [];
  const strokes: string[] = [];
  let lastX = Number.NEGATIVE_INFINITY;
  for (const { timeS, lowC, highC } of band) {
    const x = frame.x(timeS);
    if (x - lastX < APART) continue;
    lastX = x;
    strokes.push(`M${tenth(x)} ${tenth(frame.y(lowC))}V${tenth(frame.y(highC))}`);
  }
  const edge = (of: (point: ChartBandPoint) => number) =>
    band
      .map(
        (point, at) => `${at === 0 ? 'M' : 'L'}${tenth(frame.x(point.timeS))} ${tenth(frame.y(of(point)))}`,
      )
      .join('');
  return [
    { kind: 'path', d: strokes.join(''), stroke: STROKE, strokeWidth: 1.6 },
    { kind: 'path', d: edge(({ lowC }) => lowC), stroke: STROKE, strokeWidth: 1 },
    { kind: 'path', d: edge(({ highC }) => highC), stroke: STROKE, strokeWidth: 1 },
  ];
}

/** Sample of a band for a legend. */
export const BAND_LOOK = { stroke: STROKE, strokeWidth: 7, dash: [1.6, 2.4] } as const;
