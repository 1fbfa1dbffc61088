import type { Samples } from '../run/collect-samples.ts';
import { fitRiseCurve, type RiseCurve } from './fit-rise-curve.ts';
import type { SmoothTrace } from './smooth-trace.ts';

export interface FullPowerStretch {
  readonly curve: RiseCurve;
  readonly fromS: number;
  readonly toS: number;
  /** It bends from one curve by more than 0.3 % of the rise. */
  readonly rough: boolean;
}

/** Shares of the way from start to peak between which the stretch may lie; the widest that fits is taken. */
const FROM_SHARES = [0.02, 0.05, 0.1, 0.15, 0.2, 0.3];
const TO_SHARES = [0.97, 0.94, 0.91, 0.88, 0.85, 0.8, 0.75, 0.7, 0.6, 0.5];
/**
 * Of the rise; a stretch that bends from one curve by more is not at full power throughout. The next is tried only where
 * none passes: losses that grow with temperature bend any curve a little. Judgement, no source.
 */
const BEND_SHARES = [0.0003, 0.001, 0.003, 0.01];
/** From here on the stretch follows one curve only roughly, and steps of the reader may be the reason. */
const ROUGH_SHARE = 0.003;
const BLOCKS = 20;

/**
 * The stretch over which one first-order curve describes the rise: after the first bend, where heat is still on its
 * way to the probe, and before the controller throttles. Means of twenty blocks of residuals must lie within 0.03 % of the
 * rise (then 0.1 %, 0.3 %, roughly 1 % where none does), four times their noise, or from 0.3 % on half a step of the reader. Null where no stretch of 30 % of the rise does.
 */
export function fullPowerStretch(
  samples: Samples,
  smooth: SmoothTrace,
  { startC, topC, noiseC }: { readonly startC: number; readonly topC: number; readonly noiseC: number },
): FullPowerStretch | null {
  const spanC = topC - startC;
  const at = (share: number) => smooth.valuesC.findIndex((value) => value >= startC + share * spanC);
  const choices = FROM_SHARES.flatMap((from) => TO_SHARES.map((to) => ({ from, to })))
    .filter(({ from, to }) => to - from >= 0.3)
    .sort((a, b) => b.to - b.from - (a.to - a.from));
  const stepC = stepOf(samples.valuesC);
  const fitted = new Map<(typeof choices)[number], FullPowerStretch | null>();
  const stretchOf = (choice: (typeof choices)[number]): FullPowerStretch | null => {
    const known = fitted.get(choice);
    if (known !== undefined) return known;
    const stretch = fitBetween(samples, at(choice.from), at(choice.to));
    fitted.set(choice, stretch);
    return stretch;
  };
  for (const share of BEND_SHARES) {
    const bendC = Math.max(share * spanC, share >= ROUGH_SHARE ? stepC / 2 : 0);
    for (const choice of choices) {
      const stretch = stretchOf(choice);
      if (stretch !== null && isOneCurve(stretch.curve.residualsC, bendC, noiseC))
        return { ...stretch, rough: share > ROUGH_SHARE };
    }
  }
  return null;
}

function fitBetween({ timesS, valuesC }: Samples, first: number, last: number): FullPowerStretch | null {
  if (first < 0 || last - first < 2 * BLOCKS) return null;
  const part = { timesS: timesS.subarray(first, last), valuesC: valuesC.subarray(first, last) };
  const curve = fitRiseCurve(part);
  if (curve === null || !(curve.rateCPerS > 0)) return null;
  return { curve, fromS: part.timesS[0]!, toS: part.timesS[part.timesS.length - 1]!, rough: false };
}

/** Smallest step between neighbouring readings that differ, °C: the reader's own where it writes rounded values. */
function stepOf(valuesC: Float64Array): number {
  let step = Number.POSITIVE_INFINITY;
  for (let i = 1; i < valuesC.length; i++) {
    const change = Math.abs(valuesC[i]! - valuesC[i - 1]!);
    if (change > 1e-6 && change < step) step = change;
  }
  return Number.isFinite(step) ? step : 0;
}

function isOneCurve(residualsC: Float64Array, bendC: number, noiseC: number): boolean {
  const length = residualsC.length / BLOCKS;
  const allowedC = Math.max(bendC, (4 * noiseC) / Math.sqrt(length));
  for (let block = 0; block < BLOCKS; block++) {
    const from = Math.floor(block * length);
    const to = Math.floor((block + 1) * length);
    let sum = 0;
    for (let i = from; i < to; i++) sum += residualsC[i]!;
    if (Math.abs(sum / Math.max(1, to - from)) > allowedC) return false;
  }
  return true;
}
