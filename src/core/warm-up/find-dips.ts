import type { SmoothTrace } from './smooth-trace.ts';

/** A fall below the level after a quiet time, and the way back. Indices into the trace. */
export interface Dip {
  /** Last index still at the level. */
  readonly fromIndex: number;
  readonly lowestIndex: number;
  /** Back within the band to stay; null when the record ends before. */
  readonly backIndex: number | null;
}

/** After being back for so long it stays back, s. Judgement, no source. */
const STAYS_S = 60;

/**
 * Cold parts in a settled platen: the trace falls more than `bandC` below `levelC` after at least `quietS` within the
 * band. It is back at the first moment
 * from which it is no more than `bandC` below for 60 s (or to the end of the record); a swing above does not count.
 */
export function findDips(
  { timesS, valuesC }: SmoothTrace,
  levelC: number,
  { bandC, quietS }: { readonly bandC: number; readonly quietS: number },
): readonly Dip[] {
  const dips: Dip[] = [];
  const count = timesS.length;
  const below = (index: number) => levelC - valuesC[index]!;
  let quietFrom: number | null = null;
  for (let i = 0; i < count; i++) {
    if (Math.abs(below(i)) <= bandC) {
      quietFrom ??= i;
      continue;
    }
    const wasQuiet = quietFrom !== null && timesS[i]! - timesS[quietFrom]! >= quietS;
    const start: number | null = quietFrom;
    quietFrom = null;
    if (!wasQuiet || start === null || below(i) < 0) continue;
    let fromIndex = i - 1;
    while (fromIndex > start && below(fromIndex) > bandC / 4) fromIndex--;
    const backIndex = backToStay(timesS, (index) => below(index) <= bandC, i);
    const until = backIndex ?? count;
    let lowestIndex = i;
    for (let j = i; j < until; j++) if (below(j) > below(lowestIndex)) lowestIndex = j;
    dips.push({ fromIndex, lowestIndex, backIndex });
    if (backIndex === null) break;
    i = backIndex;
    quietFrom = backIndex;
  }
  return dips;
}

function backToStay(timesS: Float64Array, inside: (index: number) => boolean, from: number): number | null {
  const count = timesS.length;
  let since: number | null = null;
  for (let i = from; i < count; i++) {
    if (!inside(i)) since = null;
    else {
      since ??= i;
      if (timesS[i]! - timesS[since]! >= STAYS_S) return since;
    }
  }
  return since;
}
