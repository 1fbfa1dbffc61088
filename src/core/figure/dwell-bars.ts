import { scaleLinear } from 'd3-scale';
import { timeTicks } from '../chart/time-ticks.ts';
import { FIGURE_TEXT } from '../text/report-text.ts';
import type { Dwell } from '../trial/TrialResult.ts';
import type { Picture, Shape } from './Picture.ts';
import { INK } from './picture-svg.ts';

const WIDTH = 720;
const LEFT = 12;
const BAR_WIDTH = 640;
const ROW = 55;
const BAR = 22;
/** Soak dark, hold white, margin grey: told apart without colour, each with its seconds written in it. */
const FILLS = { soak: '#3d4b57', hold: '#ffffff', margin: '#c9c9c9', rounding: '#e8e8e8' } as const;

/** Dwells by several rules as bars of equal weight, each in its parts: soak, hold, margin, rounding up. */
export function dwellBars(dwells: readonly { readonly name: string; readonly dwell: Dwell }[]): Picture {
  const longest = Math.max(1, ...dwells.map(({ dwell }) => dwell.totalS));
  const x = scaleLinear([0, longest], [LEFT, LEFT + BAR_WIDTH]);
  const floor = 8 + dwells.length * ROW;
  const ticks = timeTicks(0, longest, 12);
  return {
    width: WIDTH,
    height: floor + 44,
    title: FIGURE_TEXT.dwellTitle,
    description: dwells.map(({ name, dwell }) => FIGURE_TEXT.dwellInWords(name, dwell)).join(' '),
    shapes: [
      ...ticks.flatMap((timeS): readonly Shape[] => [
        { kind: 'path', d: `M${r(x(timeS))} ${floor}v4`, stroke: '#555555', strokeWidth: 1 },
        text(x(timeS), floor + 16, String(timeS), 'middle', 11),
      ]),
      { kind: 'path', d: `M${LEFT} ${floor}h${BAR_WIDTH}`, stroke: '#555555' },
      text(LEFT + BAR_WIDTH / 2, floor + 34, FIGURE_TEXT.timeFromClosed, 'middle', 12),
      ...dwells.flatMap(({ name, dwell }, row) => bar(name, dwell, 8 + row * ROW, (s) => x(s))),
    ],
  };
}

function bar(name: string, dwell: Dwell, top: number, x: (timeS: number) => number): readonly Shape[] {
  const { soakS, holdS, marginS, totalS } = dwell;
  const roundingS = totalS - soakS - holdS - marginS;
  let fromS = 0;
  const parts = (
    [
      ['soak', soakS],
      ['hold', holdS],
      ['margin', marginS],
      ['rounding', roundingS],
    ] as const
  ).flatMap(([part, lengthS]): readonly Shape[] => {
    if (!(lengthS > 1e-6)) return [];
    const [left, right] = [x(fromS), x(fromS + lengthS)];
    fromS += lengthS;
    const label = FIGURE_TEXT.part(part, lengthS);
    const fits = right - left > label.length * 6.2;
    return [
      {
        kind: 'path',
        d: `M${r(left)} ${top + 22}H${r(right)}v${BAR}H${r(left)}Z`,
        fill: FILLS[part],
        stroke: INK,
        strokeWidth: 1,
      },
      ...(fits
        ? [
            {
              ...text((left + right) / 2, top + 22 + BAR / 2 + 4, label, 'middle', 12),
              fill: part === 'soak' ? '#ffffff' : INK,
            },
          ]
        : []),
    ];
  });
  return [
    { ...text(LEFT, top + 15, FIGURE_TEXT.capital(name), 'start', 13), bold: true },
    ...parts,
    { ...text(x(totalS) + 6, top + 22 + BAR / 2 + 5, FIGURE_TEXT.seconds(totalS), 'start', 14), bold: true },
  ];
}

function text(x: number, y: number, words: string, anchor: 'start' | 'middle', size: number) {
  return { kind: 'text', x, y, text: words, size, anchor, fill: INK } as const;
}

const r = (value: number): number => Math.round(value * 100) / 100;
