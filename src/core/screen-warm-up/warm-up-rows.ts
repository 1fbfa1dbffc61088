import { blockText, blockTextColumns } from '../chart/block-text.ts';
import { drawChart } from '../chart/draw-chart.ts';
import { fitRow } from '../chart/fit-row.ts';
import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from '../screen/ascii-text.ts';
import { channelStyle } from '../screen/channel-style.ts';
import { blockRows } from '../screen-shell/block-rows.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { cautionLines } from '../text/cautions.ts';
import { NEXT_WORD } from '../text/next-text.ts';
import { WARM_UP_LIVE_TEXT } from '../text/warm-up-live-text.ts';
import type { WarmUpScreenState } from './WarmUpScreen.ts';
import { warmUpChart } from './warm-up-chart.ts';
import { warmUpFigure } from './warm-up-figure.ts';
import { warmUpSentences } from './warm-up-sentences.ts';
import { type WarmUpStanding, warmUpStanding } from './warm-up-standing.ts';

const T = WARM_UP_LIVE_TEXT;
/** Lowest chart that is drawn, rows. */
const LOWEST_CHART = 6;

export const STANDING_ROLES: Readonly<Record<WarmUpStanding, SegmentRole>> = {
  'no-reader': 'fault',
  'no-reading': 'caution',
  stale: 'caution',
  fault: 'fault',
  cold: 'strong',
  heating: 'strong',
  cooling: 'caution',
  near: 'strong',
  above: 'caution',
  below: 'caution',
  'in-band': 'strong',
  ready: 'good',
};

/** The page of the live warm-up: figure and state in block letters, platens, what to know, the rule, the chart. */
export function warmUpRows(state: WarmUpScreenState, size: PageSize): readonly StyledRow[] {
  if (state.help) return [[], ...T.help.flatMap((line) => [...helpRow(line, size)])];
  if (!state.cautionsAcknowledged) return cautionRows(size);
  const standing = warmUpStanding(state);
  const head = headRows(state, standing, size);
  const facts = [
    ...platenRows(state, standing, size),
    ...warmUpSentences(state, standing).flatMap((line) => [
      ...textRows(line, size, STANDING_ROLES[standing], 1),
    ]),
    ...textRows(T.rule(state.ready.platens, state.rule.bandC, state.rule.forS, state.unit), size, 'quiet', 1),
  ];
  const room = size.rows - head.length - facts.length;
  const chart = warmUpChart(state);
  const { columns, ascii } = size;
  return [
    ...head,
    ...facts,
    ...(chart === null || room < LOWEST_CHART ? [] : drawChart({ ...chart, ascii, columns, rows: room })),
  ];
}

/** Figure on the left, state word and what to expect on the right; lower in a small window. */
function headRows(state: WarmUpScreenState, standing: WarmUpStanding, size: PageSize): readonly StyledRow[] {
  const { columns, rows, ascii } = size;
  const roomy = columns >= 110 && rows >= 28;
  const left = roomy && !ascii ? 54 : 34;
  const { text, unit, faded, caption } = warmUpFigure(state, standing);
  const digits = blockText(text, { size: roomy && !ascii ? 'big' : 'large', ascii, faded });
  const letters = unit === '' ? [] : blockText(unit, { size: 'small', ascii, faded });
  const figure: StyledRow[] = [
    ...digits.map(
      (row, i): StyledRow => [{ text: ` ${row}  ${letters[i] ?? ''}`, role: faded ? 'quiet' : 'strong' }],
    ),
    [{ text: ` ${ascii ? asciiText(caption) : caption}`, role: faded ? 'quiet' : 'plain' }],
  ];
  const right = stateRows(state, standing, { columns: columns - left - 1, roomy, ascii });
  return Array.from({ length: Math.max(figure.length, right.length) }, (_, i) => [
    ...fitRow(figure[i] ?? [], left),
    ...(right[i] ?? []),
  ]);
}

function stateRows(
  state: WarmUpScreenState,
  standing: WarmUpStanding,
  { columns, roomy, ascii }: { readonly columns: number; readonly roomy: boolean; readonly ascii: boolean },
): readonly StyledRow[] {
  const role = STANDING_ROLES[standing];
  const word = T.state[standing];
  const next = nextWord(state, standing);
  const large = roomy && !ascii && blockTextColumns(word, 'large') <= columns;
  const first = blockText(word, { size: large ? 'large' : 'small', ascii });
  // In ASCII a block word takes five rows: without room for two, the second goes in plain letters.
  const second: readonly string[] =
    next === '' ? [] : ascii ? [next.toLowerCase()] : blockText(next, { size: 'small', ascii });
  return [
    ...first.map((text): StyledRow => [{ text: ` ${text}`, role }]),
    ...second.map((text): StyledRow => [{ text: ` ${text}`, role: 'plain' }]),
    ...(state.heaters === null
      ? []
      : [[{ text: ` ${T.elapsed((state.nowUs - state.heaters.onUs) / 1e6)}`, role: 'quiet' as const }]]),
  ];
}

/** In block letters under the state: minutes to READY, or what to look at. */
function nextWord({ ready, heaters }: WarmUpScreenState, standing: WarmUpStanding): string {
  switch (standing) {
    case 'no-reader':
    case 'stale':
    case 'no-reading':
      return NEXT_WORD.seeReader;
    case 'fault':
      return NEXT_WORD.seeProbe;
    case 'cold':
      return heaters === null ? T.nextHeaters : NEXT_WORD.wait;
    case 'heating':
    case 'near':
    case 'above':
    case 'below':
      return ready.estimate === null
        ? NEXT_WORD.wait
        : NEXT_WORD.waitFor(asInTheSentence(ready.estimate.likelyInS));
    case 'in-band':
      return NEXT_WORD.wait;
    case 'cooling':
    case 'ready':
      return '';
  }
}

/** Whole minutes, rounded as the sentence below rounds them, so that the two never differ. */
function asInTheSentence(likelyInS: number): number {
  return likelyInS < 300 ? likelyInS : Math.round(likelyInS / 60) * 60;
}

/** Each platen's value; grey where it is old, unlike a value where it is a fault. */
function platenRows(
  state: WarmUpScreenState,
  standing: WarmUpStanding,
  size: PageSize,
): readonly StyledRow[] {
  const old = standing === 'stale' || standing === 'no-reader';
  const texts = state.shown.platens.map((platen, i): StyledRow => {
    const style = channelStyle(state.channels[i]?.role ?? 'upper-platen');
    const fault = state.faults[i] ?? null;
    const text = T.platen(style.letter, platen, fault, state.unit);
    return [
      {
        text: ` ${size.ascii ? asciiText(text) : text} `,
        role: fault !== null ? 'fault' : old || platen.temperatureC === null ? 'quiet' : style.role,
      },
    ];
  });
  const columns = texts.reduce((sum, [one]) => sum + (one?.text.length ?? 0), 0);
  return columns <= size.columns ? [texts.flat()] : texts;
}

function cautionRows(size: PageSize): readonly StyledRow[] {
  return [
    [],
    ...blockRows(T.read, size, 'caution'),
    [],
    ...textRows(T.readAsk, size, 'strong'),
    ...cautionLines('heat', 'closing', 'fumes', 'not-a-safety-device').flatMap((line) => [
      ...textRows(`- ${line}`, size),
    ]),
  ];
}

/** Keys stand under each other: a line of help keeps its blanks. */
function helpRow(line: string, size: PageSize): readonly StyledRow[] {
  const plain = size.ascii ? asciiText(line) : line;
  return plain.length <= size.columns - 4 ? [[{ text: `  ${plain}`, role: 'plain' }]] : textRows(line, size);
}
