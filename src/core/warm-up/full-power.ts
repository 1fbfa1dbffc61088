import type { FullPowerStretch } from './full-power-stretch.ts';
import type { FullPower, PowerOn, WithUncertainty } from './WarmUp.ts';

/** A time constant is stated only where 1/τ stands this many standard uncertainties above a straight line's 0. */
const TOLD_FROM_STRAIGHT = 3;

/**
 * Time constant τ = 1/k, where the fitted curve leaves the start temperature, and so the delay from power-on, with
 * standard uncertainties carried through the fit's covariance (GUM, JCGM 100:2008, 5.2). `startUncertaintyC` is that of
 * the start temperature.
 */
export function fullPower(
  { curve, fromS, toS, rough }: FullPowerStretch,
  startC: number,
  startUncertaintyC: number,
  powerOn: PowerOn,
): FullPower | null {
  const found = [curve.valueC, curve.rateCPerS, curve.k];
  const departs = ([valueC, rateCPerS, k]: readonly number[], fromC: number): number => {
    const x = (k! * (fromC - valueC!)) / rateCPerS!;
    return curve.middleS + (Math.abs(x) < 1e-9 ? (fromC - valueC!) / rateCPerS! : -Math.log1p(-x) / k!);
  };
  const firstRate = ([valueC, rateCPerS, k]: readonly number[], fromC: number): number =>
    rateCPerS! - k! * (fromC - valueC!);
  const carried = (of: typeof departs): WithUncertainty => {
    const slopes = found.map((value, index) => {
      const step = 1e-4 * Math.max(Math.abs(value), Math.sqrt(curve.covariance[index]![index]!), 1e-12);
      const moved = (by: number) =>
        of(
          found.map((one, i) => (i === index ? one + by : one)),
          startC,
        );
      return (moved(step) - moved(-step)) / (2 * step);
    });
    const byStart = (of(found, startC + 0.01) - of(found, startC - 0.01)) / 0.02;
    let variance = (byStart * startUncertaintyC) ** 2;
    for (let p = 0; p < 3; p++)
      for (let q = 0; q < 3; q++) variance += slopes[p]! * slopes[q]! * curve.covariance[p]![q]!;
    return { value: of(found, startC), standardUncertainty: Math.sqrt(Math.max(0, variance)) };
  };
  const departsAt = carried(departs);
  if (!Number.isFinite(departsAt.value) || !Number.isFinite(departsAt.standardUncertainty)) return null;
  const kUncertainty = Math.sqrt(curve.covariance[2]![2]!);
  const departsS = { ...departsAt, value: departsAt.value - powerOn.timeS };
  return {
    fromS: fromS - powerOn.timeS,
    toS: toS - powerOn.timeS,
    timeConstantS:
      curve.k > TOLD_FROM_STRAIGHT * kUncertainty
        ? { value: 1 / curve.k, standardUncertainty: kUncertainty / curve.k ** 2 }
        : null,
    delayS: powerOn.by === 'rise' ? null : departsS,
    departsS,
    firstRateCPerS: carried(firstRate),
    rmsC: curve.rmsC,
    rough,
  };
}
