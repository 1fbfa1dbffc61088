import type { WireEvent } from '../WireEvent.ts';
import type { PlainLayout } from './PlainLayout.ts';
import { shownName } from './shown-name.ts';
import { type TemperatureUnit, UNIT_WORDS } from './temperature-unit.ts';

type Refusal = Extract<WireEvent, { kind: 'refusal' }>;

/** Why a layout cannot give readings, with what to do; null when it can. */
export function plainRefusal(layout: PlainLayout, statedUnit: TemperatureUnit | null): Refusal | null {
  const temperatures = layout.columns.filter((column) => column.kind === 'temperature');
  if (temperatures.length === 0) {
    return {
      kind: 'refusal',
      problem: 'column-unknown',
      detail:
        'no column of the reader looks like a temperature; let the reader print a heading that names one, for example T1 (C)',
    };
  }
  const other = temperatures.find((column) => statedUnit && column.unit && column.unit !== statedUnit);
  if (other?.unit && statedUnit) {
    const where = other.unitFrom === 'heading' ? 'heading' : 'line';
    return {
      kind: 'refusal',
      problem: 'unit-contradicted',
      detail: `--unit ${statedUnit} says ${UNIT_WORDS[statedUnit]}, but the reader's ${where} says ${UNIT_WORDS[other.unit]}; leave --unit out, or set the reader to the other unit`,
    };
  }
  const unknown = temperatures.filter((column) => !column.unit);
  if (unknown.length === 0) return null;
  const names = unknown.flatMap((column) => (column.name ? [shownName(column.name)] : []));
  const which = names.length > 0 ? ` of ${names.join(', ')}` : '';
  return {
    kind: 'refusal',
    problem: 'unit-unknown',
    detail: `the reader prints no unit${which}; state it with --unit C, --unit F or --unit K`,
  };
}
