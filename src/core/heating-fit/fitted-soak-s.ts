import type { RunFit } from './run-fit.ts';

export interface CurveChange {
  readonly targetC: number;
  /** Plateau and start; those of the fit where not given. */
  readonly plateauC?: number;
  readonly startC?: number;
}

type Curve = Pick<RunFit, 'plateauC' | 'timeConstantS' | 'delayS' | 'startC'>;

/**
 * Soak time by a fitted curve, s: delay + τ·ln((Tp − T0)/(Tp − target)). Null where the curve never reaches the
 * target or starts above it. Example: 24 → 232.2 °C, τ 40.5 s, no delay, 176.67 °C → 53.5 s.
 */
export function fittedSoakS(curve: Curve, change: CurveChange): number | null {
  const plateauC = change.plateauC ?? curve.plateauC;
  const startC = change.startC ?? curve.startC;
  if (!(plateauC > change.targetC && change.targetC > startC)) return null;
  return curve.delayS + curve.timeConstantS * Math.log((plateauC - startC) / (plateauC - change.targetC));
}

/** Heating rate at the target, °C/s: (Tp − target)/τ. */
export function fittedSlopeCPerS(curve: Curve, { targetC, plateauC = curve.plateauC }: CurveChange): number {
  return (plateauC - targetC) / curve.timeConstantS;
}

/**
 * What a degree does to the soak time, s/°C: start −τ/(Tp − T0), platens (both) τ·(1/(Tp − T0) − 1/(Tp − target)).
 * Example above: −0.19 and −0.53.
 */
export function soakSensitivities(
  curve: Curve,
  targetC: number,
): { readonly perStartC: number; readonly perPlatenC: number } {
  const { plateauC, timeConstantS, startC } = curve;
  return {
    perStartC: -timeConstantS / (plateauC - startC),
    perPlatenC: timeConstantS * (1 / (plateauC - startC) - 1 / (plateauC - targetC)),
  };
}
