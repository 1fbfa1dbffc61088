import type { RecordingHead } from '../recording/RecordingEntry.ts';
import type { CureFacts } from './CureFacts.ts';
import { checkCureFacts } from './check-cure-facts.ts';

const KEYS = {
  energy: 'cure-activation-energy-kj-per-mol',
  reference: 'cure-reference-c',
  from: 'cure-from-c',
  to: 'cure-to-c',
} as const;

/** Head lines that keep the data sheet's cure figures with a recording. */
export function cureHeadLines(cure: CureFacts | null | undefined): Readonly<Record<string, string>> {
  if (cure == null) return {};
  return {
    [KEYS.energy]: String(cure.activationEnergyKjPerMol),
    [KEYS.reference]: String(cure.referenceC),
    [KEYS.from]: String(cure.rangeC.from),
    [KEYS.to]: String(cure.rangeC.to),
  };
}

/** Cure figures that a recording's head states; undefined where it states none. Refuses figures that cannot be. */
export function headCure({ further }: Pick<RecordingHead, 'further'>): CureFacts | undefined {
  const energy = further[KEYS.energy];
  if (energy === undefined) return undefined;
  const number = (key: string): number => Number(further[key] ?? Number.NaN);
  return checkCureFacts({
    activationEnergyKjPerMol: Number(energy),
    referenceC: number(KEYS.reference),
    rangeC: { from: number(KEYS.from), to: number(KEYS.to) },
  });
}

/** Key under which a recording's head keeps the highest bond-line temperature allowed, °C. */
export const HIGHEST_PEAK_KEY = 'highest-peak-c';

/** Highest bond-line temperature allowed that a head states, °C; undefined where it states none. */
export function headHighestPeakC({ further }: Pick<RecordingHead, 'further'>): number | undefined {
  const value = Number(further[HIGHEST_PEAK_KEY] ?? Number.NaN);
  return Number.isFinite(value) ? value : undefined;
}
