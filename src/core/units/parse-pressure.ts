import { PA_PER_BAR, PA_PER_PSI } from './exact-factors.ts';
import { requireNotNegative } from './require-not-negative.ts';
import { splitQuantity } from './split-quantity.ts';

const KIND = {
  what: 'pressure',
  spellings: {
    psi: 'psi',
    psig: 'psi',
    'lbf/in2': 'psi',
    'lbf/in²': 'psi',
    pa: 'Pa',
    kpa: 'kPa',
    bar: 'bar',
    barg: 'bar',
    mbar: 'mbar',
    mpa: 'MPa',
  },
  examples: '120psi, 830kPa, 8.3bar or 0.83MPa',
} as const;

const PASCAL = { psi: PA_PER_PSI, Pa: 1, kPa: 1000, bar: PA_PER_BAR, mbar: 100, MPa: 1e6 } as const;

/**
 * Reads a gauge pressure with its unit and returns psi. psi comes back as written, without a detour through Pa.
 * Refuses a missing or unknown unit and a pressure below 0.
 * `mPa` is taken as MPa: nobody sets a ram to a thousandth of a pascal. Example: '1bar' → 14.5038.
 */
export function parsePressure(text: string, option: string): number {
  const { value, unit } = splitQuantity<keyof typeof PASCAL>(text, option, KIND);
  const pressurePsi = unit === 'psi' ? value : (value * PASCAL[unit]) / PA_PER_PSI;
  return requireNotNegative(pressurePsi, 'gauge pressure', { option, given: text });
}
