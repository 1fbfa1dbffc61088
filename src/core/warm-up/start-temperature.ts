import type { Samples } from '../run/collect-samples.ts';
import { median } from '../run/median.ts';
import { mean } from './straight-drift.ts';

export interface StartTemperature {
  readonly startC: number;
  readonly standardUncertaintyC: number;
}

/**
 * Temperature before the rise: mean of the readings before power-on where that is known, else of the first half of those
 * before the trace leaves its first readings by more than four times the noise (or 1 % of the rise).
 */
export function startTemperature(
  { timesS, valuesC }: Samples,
  noiseC: number,
  powerOnS: number | null,
): StartTemperature {
  const topC = valuesC.reduce((top, value) => Math.max(top, value), Number.NEGATIVE_INFINITY);
  const firstC = median(valuesC.subarray(0, Math.min(5, valuesC.length)))!;
  const leavesC = firstC + Math.max(4 * noiseC, 0.01 * (topC - firstC));
  const leaves = Math.max(
    1,
    valuesC.findIndex((value) => value > leavesC),
  );
  let rest = Math.max(1, Math.ceil(leaves / 2));
  if (powerOnS !== null) {
    let before = 0;
    while (before < timesS.length && timesS[before]! <= powerOnS) before++;
    // Nothing before power-on: the first readings, whose rise is still on its way through the platen.
    rest = before > 0 ? before : Math.max(1, Math.min(3, rest));
  }
  return {
    startC: mean(valuesC.subarray(0, rest)),
    standardUncertaintyC: noiseC / Math.sqrt(rest),
  };
}
