import type { Press } from '../press/Press.ts';
import { type ExportField, field } from './ExportField.ts';

/** Fields of `export presses`, one row a press. */
export const PRESS_FIELDS: readonly ExportField<Press>[] = [
  field('press', 'press', (press) => press.name),
  field('ramBoreMm', 'bore of a ram', (press) => press.ramBoreMm),
  field('ramRodMm', 'rod of a ram that pulls', (press) => press.ramRodMm),
  field('rams', 'number of rams', (press) => press.rams),
  field('gaugeDivisionPsi', 'division of the gauge', (press) => press.gaugeDivisionPsi),
  field(
    'upperPlatenSetPointC',
    'set point of the upper platen',
    (press) => press.platenSetPointC?.upper ?? null,
  ),
  field(
    'lowerPlatenSetPointC',
    'set point of the lower platen',
    (press) => press.platenSetPointC?.lower ?? null,
  ),
  field('timerStartsAt', 'what starts the press timer: button or closing', (press) => press.timerStartsAt),
  field('timerOffsetS', 'from that start to press closed', (press) => press.timerOffsetS),
  field('timerStepS', 'step of the press timer', (press) => press.timerStepS),
];
