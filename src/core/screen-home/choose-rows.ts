import type { StyledRow } from '../chart/StyledRow.ts';
import { listStart } from '../screen-shell/list-window.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { tableRow } from '../screen-shell/table-row.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { CHOOSE_TEXT } from '../text/home-text.ts';
import { numberText, secondsText, type TemperatureUnit, temperatureText } from '../text/units-text.ts';
import type { HomeState } from './HomeState.ts';

type ChoosePage = Extract<HomeState['page'], { readonly kind: 'choose' }>;

/** Presses or assemblies as a table, the chosen one marked. */
export function chooseRows(state: HomeState, page: ChoosePage, size: PageSize): readonly StyledRow[] {
  const rows = page.what === 'press' ? pressCells(state) : assemblyCells(state);
  if (rows.length === 0) return [[], ...textRows(CHOOSE_TEXT[page.what].empty, size)];
  const room = Math.max(1, size.rows - 3);
  const apart = rows.length * 2 <= room;
  const start = listStart(rows.length, page.selected, apart ? rows.length : room);
  return [
    [],
    row(CHOOSE_TEXT[page.what].headings, size, 'quiet', false),
    ...(apart ? [[]] : []),
    ...rows.slice(start, start + room).flatMap((cells, i) => {
      const selected = start + i === page.selected;
      const shown = row(cells, size, selected ? 'key' : 'plain', selected);
      return apart ? [shown, []] : [shown];
    }),
  ];
}

function pressCells({ facts, unit }: HomeState): readonly (readonly string[])[] {
  return facts.presses.map((press) => [
    press.name,
    press.ramBoreMm === null ? '—' : `${press.rams} × ${numberText(press.ramBoreMm, 0)} mm`,
    press.platenSetPointC === null ? '—' : platens(press.platenSetPointC, unit),
    press.gaugeDivisionPsi === null ? '—' : `${numberText(press.gaugeDivisionPsi, 1)} psi`,
  ]);
}

function platens(
  { upper, lower }: { readonly upper: number; readonly lower: number },
  unit: TemperatureUnit,
): string {
  const brief = (c: number) => temperatureText(c, unit).split(' (')[0] ?? '';
  return upper === lower ? brief(upper) : `${brief(upper)} / ${brief(lower)}`;
}

function assemblyCells({ facts, unit }: HomeState): readonly (readonly string[])[] {
  return facts.assemblies.map((assembly) => [
    assembly.name,
    assembly.ringOuterDiameterMm === null
      ? '—'
      : `${numberText(assembly.ringOuterDiameterMm, 0)} / ${numberText(assembly.ringInnerDiameterMm, 0)} mm`,
    assembly.carrier ?? '—',
    temperatureText(assembly.targetC, unit).split(' (')[0] ?? '',
    secondsText(assembly.holdS),
  ]);
}

function row(
  cells: readonly string[],
  { columns, ascii }: PageSize,
  role: 'quiet' | 'key' | 'plain',
  selected: boolean,
): StyledRow {
  const spare = Math.min(8, Math.max(0, Math.floor((columns - 80) / 3)));
  const widths = cells.length === 4 ? [18 + spare, 14, 20 + spare, 14] : [16 + spare, 15, 22 + spare, 9, 8];
  return [
    { text: selected ? ' > ' : '   ', role: 'strong' },
    ...tableRow(
      widths.map((width, i) => ({ text: cells[i] ?? '', columns: width })),
      role,
      ascii,
    ),
  ];
}
