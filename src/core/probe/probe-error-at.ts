import type { CalibrationPoint, Probe } from './Probe.ts';

/** What a probe's own calibration says at one temperature. */
export interface ProbeErrorAt {
  /** What the probe reads too high, °C; take it off the reading. */
  readonly errorC: number;
  readonly standardUncertaintyC: number;
  /** 'bracketed': a point on either side, or at this very temperature. */
  readonly kind: 'bracketed' | 'extrapolated';
  /** To the nearest point, °C. */
  readonly distanceC: number;
}

/** Within this of a point its own figures hold, °C. */
const AT_THE_POINT_C = 5;
/**
 * Doubt that each degree beyond the outermost point adds, °C per °C (standard). The share of the temperature in the
 * tolerance of type K is 0.75 % (ASTM E230, IEC class 2): a wire not yet measured up there may drift off as fast;
 * rectangular, so ÷ √3. Common practice, no source.
 */
const DRIFT_PER_C = 0.0075 / Math.sqrt(3);

/**
 * Error of a probe at a temperature from its calibration points: straight line between the two points around it,
 * uncertainty the larger of the two (points of one certificate err together). Beyond the outermost point the error
 * of that point is held and the uncertainty grows with the distance: √(u² + (distance · 0.0043)²).
 * Null without points. Temperatures of the reference and of the reading are taken as one: they differ by the error.
 */
export function probeErrorAt(probe: Pick<Probe, 'points'>, temperatureC: number): ProbeErrorAt | null {
  const { points } = probe;
  const above = points.find((point) => point.temperatureC >= temperatureC);
  const below = points.findLast((point) => point.temperatureC <= temperatureC);
  if (above !== undefined && below !== undefined) return between(below, above, temperatureC);
  const nearest = above ?? below;
  if (nearest === undefined) return null;
  const distanceC = Math.abs(temperatureC - nearest.temperatureC);
  if (distanceC <= AT_THE_POINT_C) return { ...figures(nearest), kind: 'bracketed', distanceC };
  return {
    errorC: nearest.errorC,
    standardUncertaintyC: Math.hypot(nearest.standardUncertaintyC, distanceC * DRIFT_PER_C),
    kind: 'extrapolated',
    distanceC,
  };
}

function between(below: CalibrationPoint, above: CalibrationPoint, temperatureC: number): ProbeErrorAt {
  const spanC = above.temperatureC - below.temperatureC;
  const share = spanC === 0 ? 0 : (temperatureC - below.temperatureC) / spanC;
  return {
    errorC: below.errorC + share * (above.errorC - below.errorC),
    standardUncertaintyC: Math.max(below.standardUncertaintyC, above.standardUncertaintyC),
    kind: 'bracketed',
    distanceC: Math.min(temperatureC - below.temperatureC, above.temperatureC - temperatureC),
  };
}

function figures({ errorC, standardUncertaintyC }: CalibrationPoint) {
  return { errorC, standardUncertaintyC };
}
