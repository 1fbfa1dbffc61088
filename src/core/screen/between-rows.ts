import type { StyledRow } from '../chart/StyledRow.ts';
import { coolingText } from '../text/cooling-text.ts';
import { figuresLine, oneMoreLine } from '../text/result-text.ts';
import { bondLineChannels } from './bond-line-channels.ts';
import { runsTable } from './runs-table.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** Between two runs: the runs with their reasons, what they come to, what one more would buy. */
export function betweenRows(state: TrialScreenState, columns: number, rows: number): readonly StyledRow[] {
  const { statistics } = state.standing;
  const figures = [figuresLine(statistics), oneMoreLine(statistics)].filter((line) => line !== null);
  // One row where both fit: the table needs the room.
  const joined = figures.join('; ');
  const lines = joined.length <= columns - 2 ? [joined] : figures;
  // Three runs come before the second line.
  const most = Math.max(1, rows - 1 - Math.min(3, state.standing.runs.length));
  const shown = lines.filter((line) => line !== '').slice(0, Math.min(most, Math.max(0, rows - 2)));
  const table = runsTable(state, {
    columns,
    rows: Math.max(2, rows - shown.length),
    selected: -1,
    back: state.runsBack,
  });
  return [...table, ...shown.map((text) => [{ text: ` ${text}`, role: 'strong' as const }])];
}

/** How the carrier cools, where the next run would start too warm; null where it is cool or unknown. */
export function coolingLine({ cooling, unit, shown, setup }: TrialScreenState): string | null {
  if (cooling === null || cooling.kind === 'cool') return null;
  // The same reading as the large figure's.
  const value = shown?.values[bondLineChannels(setup.roles)[0] ?? 0];
  const temperatureC = value?.kind === 'temperature' ? value.temperatureC : cooling.temperatureC;
  return coolingText({ ...cooling, temperatureC }, unit);
}
