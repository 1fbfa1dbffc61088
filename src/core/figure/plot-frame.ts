import { scaleLinear } from 'd3-scale';
import { timeTicks } from '../chart/time-ticks.ts';
import { FIGURE_TEXT } from '../text/report-text.ts';
import { numberText, type TemperatureUnit } from '../text/units-text.ts';
import { temperatureCToF } from '../units/temperature-c-to-f.ts';
import type { Box, Shape } from './Picture.ts';
import { INK } from './picture-svg.ts';

export interface PlotFrameInput {
  readonly box: Box;
  readonly fromS: number;
  readonly toS: number;
  readonly lowC: number;
  readonly highC: number;
  readonly unit: TemperatureUnit;
  readonly timeTitle: string;
}

export interface PlotFrame {
  /** Places of a time and of a temperature. */
  x(timeS: number): number;
  y(temperatureC: number): number;
  /** Grid, axes, ticks and titles, to be drawn below the lines. */
  readonly shapes: readonly Shape[];
}

const GRID = '#dcdcdc';
const AXIS = '#555555';
const TICK_SIZE = 11;
const TITLE_SIZE = 12;

/** Scales and axes of a plot of temperature against time: the chosen unit on the left, the other on the right. */
export function plotFrame(input: PlotFrameInput): PlotFrame {
  const { box, fromS, toS, lowC, highC, unit } = input;
  const x = scaleLinear([fromS, toS], [box.left, box.left + box.width]);
  const y = scaleLinear([lowC, highC], [box.top + box.height, box.top]);
  const other = unit === 'F' ? 'C' : 'F';
  return {
    x: (timeS) => x(timeS),
    y: (temperatureC) => y(temperatureC),
    shapes: [
      ...temperatureTicks(input, unit).map(
        ({ at }): Shape => line(`M${box.left} ${n(y(at))}h${box.width}`, GRID),
      ),
      ...temperatureTicks(input, unit).map(({ at, text }) => tick(box.left - 7, y(at) + 4, text, 'end')),
      ...temperatureTicks(input, other).flatMap(({ at, text }) => [
        line(`M${box.left + box.width} ${n(y(at))}h4`, AXIS),
        tick(box.left + box.width + 8, y(at) + 4, text, 'start'),
      ]),
      ...timeAxis(input, (timeS) => x(timeS)),
      line(`M${box.left} ${box.top}h${box.width}v${box.height}h${-box.width}Z`, AXIS),
      sideTitle(box.left - 42, box, `${FIGURE_TEXT.temperature}, °${unit}`),
      sideTitle(box.left + box.width + 50, box, `°${other}`),
    ],
  };
}

function temperatureTicks({ lowC, highC, box }: PlotFrameInput, unit: TemperatureUnit) {
  const shown = (c: number) => (unit === 'F' ? temperatureCToF(c) : c);
  return scaleLinear([shown(lowC), shown(highC)], [0, 1])
    .ticks(Math.max(3, Math.round(box.height / 42)))
    .map((value) => ({ at: unit === 'F' ? (value - 32) / 1.8 : value, text: tidy(value) }));
}

function timeAxis({ box, fromS, toS, timeTitle }: PlotFrameInput, x: (timeS: number) => number): Shape[] {
  const floor = box.top + box.height;
  const short = toS - fromS < box.width / 60;
  const ticks = short
    ? scaleLinear([fromS, toS], [0, 1]).ticks(Math.round(box.width / 60))
    : timeTicks(fromS, toS, Math.round(box.width / 45));
  return [
    ...ticks.flatMap((timeS) => [
      line(`M${n(x(timeS))} ${box.top}v${box.height}`, GRID),
      line(`M${n(x(timeS))} ${floor}v4`, AXIS),
      tick(x(timeS), floor + 17, tidy(timeS), 'middle'),
    ]),
    {
      kind: 'text',
      x: box.left + box.width / 2,
      y: floor + 35,
      text: timeTitle,
      size: TITLE_SIZE,
      anchor: 'middle',
      fill: INK,
    },
  ];
}

function line(d: string, stroke: string): Shape {
  return { kind: 'path', d, stroke, strokeWidth: stroke === GRID ? 0.7 : 1 };
}

function tick(x: number, y: number, text: string, anchor: 'start' | 'middle' | 'end'): Shape {
  return { kind: 'text', x, y, text, size: TICK_SIZE, anchor, fill: AXIS };
}

function sideTitle(x: number, box: Box, text: string): Shape {
  const y = box.top + box.height / 2;
  return { kind: 'text', x, y, text, size: TITLE_SIZE, anchor: 'middle', turned: -90, fill: INK };
}

/** A tick's number without float dust, with a true minus sign. */
function tidy(value: number): string {
  const decimals = Number.isInteger(value) ? 0 : Math.abs(value * 10 - Math.round(value * 10)) < 1e-9 ? 1 : 2;
  return numberText(value, decimals).replace('-', '−');
}

const n = (value: number): number => Math.round(value * 100) / 100;
