import type { StyledRow } from '../chart/StyledRow.ts';
import { GUIDE_TEXT } from '../text/home-text.ts';
import { blockRows } from './block-rows.ts';
import { choiceRows } from './choice-rows.ts';
import type { GuideState } from './Guide.ts';
import type { PageSize } from './ShellView.ts';
import { textRows } from './text-rows.ts';

/** The present question: its name in block letters, the question, then the entry or the choices. */
export function guideRows(state: GuideState, size: PageSize): readonly StyledRow[] {
  const { question } = state;
  const top: readonly StyledRow[] = [
    [],
    ...blockRows(question.title, size, 'strong', size.columns >= 110 && size.rows >= 28 ? 'large' : 'small'),
    [],
    ...textRows(question.ask, size, 'strong'),
    [],
  ];
  if (question.kind === 'choice') {
    const room = { ...size, rows: size.rows - top.length };
    const choices = question.choices.map((choice) => ({
      ...choice,
      first: choice.value === question.initial,
    }));
    return [...top, ...choiceRows(choices, room)];
  }
  return [
    ...top,
    [
      { text: '   ', role: 'plain' },
      { text: ` ${state.text}_ `.padEnd(44), role: 'key' },
    ],
    [],
    ...(question.initial === '' || state.text !== ''
      ? []
      : textRows(GUIDE_TEXT.enterTakes(question.initial), size, 'plain', 3)),
    ...(state.trouble === null ? [] : textRows(state.trouble, size, 'caution', 3)),
    [],
    ...question.hints.flatMap((hint) => textRows(hint, size, 'quiet', 3)),
  ];
}
