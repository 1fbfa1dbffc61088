import type { BondingState } from '../bonding/BondingState.ts';
import type { StyledRow } from '../chart/StyledRow.ts';
import { blockRows } from '../screen-shell/block-rows.ts';
import { choiceRows } from '../screen-shell/choice-rows.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { BONDING_TEXT } from '../text/bonding-text.ts';
import { cautionLines } from '../text/cautions.ts';
import { secondsText, temperatureText } from '../text/units-text.ts';
import { timerRows } from './timer-rows.ts';

/** The page of the production timer: cautions, then the choice of a recipe, then the timer. */
export function bondingRows(state: BondingState, size: PageSize): readonly StyledRow[] {
  if (state.help) return [...BONDING_TEXT.help.flatMap((line) => [...textRows(line, size)])];
  if (!state.cautionsAcknowledged) return cautionRows(size);
  if (state.opening && state.job === null) return openingRows(state, size);
  return state.job === null ? chooseRows(state, size) : timerRows(state, size);
}

function cautionRows(size: PageSize): readonly StyledRow[] {
  return [
    [],
    ...blockRows(BONDING_TEXT.state.read, size, 'caution'),
    [],
    ...textRows(BONDING_TEXT.read, size, 'strong'),
    ...cautionLines('heat', 'closing', 'fumes', 'not-a-safety-device').flatMap((line) => [
      ...textRows(`- ${line}`, size),
    ]),
  ];
}

function openingRows(state: BondingState, size: PageSize): readonly StyledRow[] {
  const recipe = state.choices[state.selected];
  return [
    [],
    ...blockRows(BONDING_TEXT.state.opening, size),
    [],
    ...textRows(BONDING_TEXT.opening, size),
    ...(recipe === undefined
      ? []
      : textRows(`${recipe.assemblyName} on ${recipe.pressName}`, size, 'strong')),
  ];
}

function chooseRows(state: BondingState, size: PageSize): readonly StyledRow[] {
  const top: readonly StyledRow[] = [
    [],
    ...blockRows(BONDING_TEXT.state.choose, size),
    [],
    ...textRows(BONDING_TEXT.choose, size),
    [],
  ];
  const room = size.rows - top.length;
  const from = Math.max(0, Math.min(state.selected - Math.floor(room / 2), state.choices.length - room));
  const shown = state.choices.slice(from, from + room).map((recipe, i) => ({
    key: from + i < 9 ? String(from + i + 1) : '·',
    word: `${recipe.assemblyName} on ${recipe.pressName}`,
    detail: `version ${recipe.version}, dwell ${secondsText(recipe.dwellS)}, target ${temperatureText(recipe.targetC, state.unit)}${recipe.simulated ? ', SIMULATED' : ''}`,
    first: from + i === state.selected,
  }));
  return [...top, ...choiceRows(shown, { ...size, rows: room }, 24)];
}
