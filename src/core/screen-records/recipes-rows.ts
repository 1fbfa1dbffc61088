import { recipesInForce } from '../bonding/recipes-in-force.ts';
import type { StyledRow } from '../chart/StyledRow.ts';
import { listStart } from '../screen-shell/list-window.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { tableRow } from '../screen-shell/table-row.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { SHELL_TEXT } from '../text/home-text.ts';
import { WITHDRAW_TEXT } from '../text/recipe-text.ts';
import { RECORDS_TEXT } from '../text/records-text.ts';
import { recipeLines } from '../text/store-lists-text.ts';
import { secondsText, type TemperatureUnit } from '../text/units-text.ts';
import type { RecordsState } from './RecordsState.ts';

/** Every recipe of the store, newest first; the chosen one in full below. */
export function recipesRows(
  state: RecordsState,
  unit: TemperatureUnit,
  size: PageSize,
): readonly StyledRow[] {
  const { recipes, view } = state;
  if (recipes.length === 0) return [[], ...textRows(RECORDS_TEXT.noRecipe, size)];
  const selected = view.kind === 'recipes' ? view.selected : 0;
  const chosen = recipes[selected];
  const inForce = recipesInForce(recipes);
  const detail =
    chosen === undefined
      ? []
      : recipeLines(chosen, unit, inForce.includes(chosen))
          .split('\n')
          .flatMap((line, i) => textRows(line.trim(), size, i === 0 ? 'strong' : 'plain', i === 0 ? 2 : 4));
  const room = Math.max(1, Math.min(recipes.length, size.rows - detail.length - 4));
  const start = listStart(recipes.length, selected, room);
  return [
    [],
    row(RECORDS_TEXT.recipeHeadings, size, 'quiet', false),
    ...recipes
      .slice(start, start + room)
      .map((recipe, i) =>
        row(
          [
            recipe.assemblyName,
            recipe.pressName,
            `${recipe.version}`,
            secondsText(recipe.dwellS),
            recipe.acceptedAt.slice(0, 10),
            [
              recipe.simulated ? SHELL_TEXT.simulated : '',
              recipe.withdrawn == null ? '' : WITHDRAW_TEXT.withdrawn,
              inForce.includes(recipe) ? WITHDRAW_TEXT.inForce : '',
              recipe.provisional ? RECORDS_TEXT.provisional : '',
            ]
              .filter(Boolean)
              .join(', '),
          ],
          size,
          start + i === selected ? 'key' : 'plain',
          start + i === selected,
        ),
      ),
    [],
    ...detail,
  ];
}

function row(
  texts: readonly string[],
  { columns, ascii }: PageSize,
  role: 'quiet' | 'key' | 'plain',
  selected: boolean,
): StyledRow {
  const spare = Math.min(10, Math.max(0, Math.floor((columns - 80) / 2)));
  const widths = [13 + spare, 10 + spare, 7, 7, 10, 22];
  return [
    { text: selected ? ' > ' : '   ', role: 'strong' },
    ...tableRow(
      widths.map((width, i) => ({ text: texts[i] ?? '', columns: width, right: i === 2 || i === 3 })),
      role,
      ascii,
    ),
  ];
}
