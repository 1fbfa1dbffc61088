import type { BondingState } from '../bonding/BondingState.ts';
import type { BlockSize } from '../chart/block-text.ts';
import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { BONDING_TEXT } from '../text/bonding-text.ts';
import { secondsText } from '../text/units-text.ts';
import { besideCaptions, besideRows } from './beside-rows.ts';
import { type BondLineHead, bondLineHead } from './bond-line-head.ts';
import { factsOf } from './facts-of.ts';
import { type Head, headOf } from './head-of.ts';
import { loggedRows } from './logged-rows.ts';

const FIGURES: readonly BlockSize[] = ['big', 'large', 'small'];
const WORDS: readonly BlockSize[] = ['large', 'small'];

/**
 * The timer of a recipe. Read from two metres: time and bond line side by side in block digits, under each its state in
 * block letters, the hold, and what the hand does next. Then the facts in plain letters, then what was logged.
 */
export function timerRows(state: BondingState, size: PageSize): readonly StyledRow[] {
  const roomy = size.columns >= 110 && size.rows >= 28;
  const head = headOf(state);
  const bondLine = bondLineHead(state);
  const told = factsOf(state).map(({ text, role }) => textRows(text, size, role));
  const facts = told.flat();
  const top = [
    ...(roomy ? [[]] : []),
    ...figureRows(state, head, bondLine, size, roomy),
    ...(roomy ? [[]] : []),
    ...wordRows(head, bondLine, size, roomy),
  ];
  const rows = [...top];
  for (const { word, role, needed } of furtherWords(head)) {
    // What the hold came to is worth more than the last facts.
    const below = needed ? 1 : facts.length;
    const block = (roomy ? WORDS : (['small'] as const))
      .map((one) => besideRows({ text: word, role }, null, size, [one]))
      .find((drawn) => drawn !== null && rows.length + 1 + drawn.length + below <= size.rows);
    rows.push(...(block ? [[], ...block] : [[{ text: `  ${word}`, role }]]));
  }
  if (rows.length + 1 + facts.length <= size.rows) rows.push([]);
  // A fact that does not fit whole is left out: half a sentence says something else.
  for (const fact of told) if (rows.length + fact.length <= size.rows) rows.push(...fact);
  const room = size.rows - rows.length;
  return room >= 3 ? [...rows, [], ...loggedRows(state, size, room - 1)] : rows;
}

function figureRows(
  state: BondingState,
  { figureS, sign, caption, role, word }: Head,
  bondLine: BondLineHead | null,
  size: PageSize,
  roomy: boolean,
): readonly StyledRow[] {
  const figure = besideRows(
    { text: `${sign}${figureS.toFixed(0)}`, role: role === 'caution' ? 'strong' : role, unit: 'S' },
    bondLine && { text: bondLine.figure, role: bondLine.role, faded: bondLine.faded },
    size,
    roomy ? FIGURES : FIGURES.slice(1),
  );
  const captions = besideCaptions(`${secondsText(figureS, 0)} ${caption}`, bondLine?.caption ?? null, size);
  return [...(figure ?? []), word === 'dwell-done' && flashes(state) ? bar(captions, size) : captions];
}

function wordRows(
  { word, role }: Head,
  bondLine: BondLineHead | null,
  size: PageSize,
  roomy: boolean,
): readonly StyledRow[] {
  const left = { text: BONDING_TEXT.state[word], role };
  const right = bondLine && { text: bondLine.word, role: bondLine.wordRole };
  return (
    besideRows(left, right, size, roomy ? WORDS : ['small']) ??
    besideRows(left, null, size, ['small']) ?? [[{ text: `  ${left.text}`, role: left.role }]]
  );
}

/** Once a second of the person's clock: slow, and the letters stay readable. */
const flashes = ({ nowUs, job }: BondingState): boolean =>
  Math.floor(nowUs / (job?.speed ?? 1) / 500_000) % 2 === 0;

/** The captions as a bar across the window. */
function bar(captions: StyledRow, { columns }: PageSize): StyledRow {
  const text = captions.map((one) => one.text).join('');
  return [{ text: text.padEnd(columns), role: 'flash' }];
}

interface FurtherWord {
  readonly word: string;
  readonly role: SegmentRole;
  readonly needed: boolean;
}

function furtherWords({ hold, next }: Head): readonly FurtherWord[] {
  const words = BONDING_TEXT.state;
  const role = hold === 'verified' ? 'good' : 'caution';
  return [
    ...(hold === null ? [] : [{ word: words[hold], role, needed: true } as const]),
    ...(next === null ? [] : [{ word: words[next], role: 'strong', needed: false } as const]),
  ];
}
