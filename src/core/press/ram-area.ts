import { lengthText } from '../text/units-text.ts';
import { PressureError } from './PressureError.ts';
import { requireAboveZero } from './require-above-zero.ts';

/**
 * Area of all rams that the air acts on, mm²: π/4·bore² for each, less the rod's area when the rams close
 * the press by pulling. Refuses sizes of 0 or less, a rod as thick as the bore, and no or half rams.
 * Example: one ram of 200 mm bore → 31416 mm².
 */
export function ramAreaMm2(ram: {
  readonly ramBoreMm: number;
  readonly ramRodMm?: number | null;
  readonly rams?: number;
  readonly ramPulls?: boolean;
}): number {
  const { ramBoreMm, ramRodMm = null, rams = 1, ramPulls = false } = ram;
  requireAboveZero(ramBoreMm, 'ramBoreMm', 'ram bore', 'mm');
  if (!(Number.isInteger(rams) && rams >= 1)) {
    throw new PressureError(
      'rams-impossible',
      'rams',
      `number of rams must be 1 or more, came ${rams}`,
      'Count the rams that close the press',
    );
  }
  if (ramPulls && ramRodMm === null) {
    throw new PressureError(
      'size-missing',
      'ramRodMm',
      'a ram that pulls needs its rod diameter, came none',
      'Measure the ram rod and give it with its unit',
    );
  }
  if (ramRodMm !== null) {
    requireAboveZero(ramRodMm, 'ramRodMm', 'ram rod', 'mm');
    if (ramRodMm >= ramBoreMm) {
      throw new PressureError(
        'size-impossible',
        'ramRodMm',
        `ram rod must be thinner than the bore, came rod ${lengthText(ramRodMm)}, bore ${lengthText(ramBoreMm)}`,
        'Check whether bore and rod were swapped',
      );
    }
  }
  const rodMm = ramPulls ? (ramRodMm ?? 0) : 0;
  return (Math.PI / 4) * (ramBoreMm ** 2 - rodMm ** 2) * rams;
}
