import type { SmoothTrace } from './smooth-trace.ts';

/**
 * When a trace comes inside ± `bandC` of a level to stay, up to index `end` (not included): the crossing after its last
 * value outside, between readings by a straight line. Null when it is outside at the end or never was inside.
 */
export function comesInsideToStay(
  { timesS, valuesC }: SmoothTrace,
  levelC: number,
  bandC: number,
  end: number = timesS.length,
): number | null {
  let last = end - 1;
  while (last >= 0 && Math.abs(valuesC[last]! - levelC) <= bandC) last--;
  if (last === end - 1) return null;
  if (last < 0) return timesS[0] ?? null;
  return crossing(timesS, valuesC, last, valuesC[last]! < levelC ? levelC - bandC : levelC + bandC);
}

/** When a trace first comes to within `bandC` of a level; null when never. */
export function firstInside({ timesS, valuesC }: SmoothTrace, levelC: number, bandC: number): number | null {
  const index = valuesC.findIndex((value) => Math.abs(value - levelC) <= bandC);
  if (index < 0) return null;
  if (index === 0) return timesS[0]!;
  const edgeC = valuesC[index - 1]! < levelC ? levelC - bandC : levelC + bandC;
  return crossing(timesS, valuesC, index - 1, edgeC);
}

/** When a rising trace first reaches a value, s; null when never. */
export function firstAbove({ timesS, valuesC }: SmoothTrace, valueC: number): number | null {
  const index = valuesC.findIndex((value) => value >= valueC);
  if (index < 0) return null;
  return index === 0 ? timesS[0]! : crossing(timesS, valuesC, index - 1, valueC);
}

function crossing(timesS: Float64Array, valuesC: Float64Array, before: number, edgeC: number): number {
  const stepC = valuesC[before + 1]! - valuesC[before]!;
  const share = stepC === 0 ? 0 : (edgeC - valuesC[before]!) / stepC;
  return timesS[before]! + Math.min(1, Math.max(0, share)) * (timesS[before + 1]! - timesS[before]!);
}
