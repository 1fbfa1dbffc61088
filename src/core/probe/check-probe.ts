import type { Probe } from './Probe.ts';
import { ProbeError } from './ProbeError.ts';

/** Farther off than this a probe is broken or of another type, not calibrated, °C. Common practice, no source. */
const FARTHEST_ERROR_C = 30;
/** Two points closer than this are one temperature, °C. */
const SAME_C = 0.5;

/** A probe fit to keep: points in order, each finite and sensible. Refuses by name; returns a frozen copy. */
export function checkProbe(probe: Probe): Probe {
  if (probe.name.trim() === '')
    throw new ProbeError('probe-wrong', 'a probe must have a name, came none', 'Give the tag on its lead');
  const points = [...probe.points].sort((a, b) => a.temperatureC - b.temperatureC);
  for (const [index, point] of points.entries()) {
    const where = `calibration point at ${point.temperatureC} °C`;
    const figures = [point.temperatureC, point.errorC, point.standardUncertaintyC];
    if (!figures.every(Number.isFinite))
      throw new ProbeError('point-wrong', `${where}: a figure is not a number`, 'Write 177C:-0.6C:0.5C');
    if (Math.abs(point.errorC) > FARTHEST_ERROR_C)
      throw new ProbeError(
        'point-wrong',
        `${where}: error must lie within ±${FARTHEST_ERROR_C} °C, came ${point.errorC} °C`,
        'Give what the probe read less the reference, as a difference',
      );
    if (!(point.standardUncertaintyC > 0))
      throw new ProbeError(
        'point-wrong',
        `${where}: uncertainty must be above 0 °C, came ${point.standardUncertaintyC} °C`,
        'Take it from the certificate',
      );
    const before = points[index - 1];
    if (before !== undefined && point.temperatureC - before.temperatureC < SAME_C)
      throw new ProbeError(
        'point-wrong',
        `two calibration points at ${before.temperatureC} and ${point.temperatureC} °C`,
        'Keep the newer of the two',
      );
  }
  return Object.freeze({
    ...probe,
    points: Object.freeze(points.map((point) => Object.freeze({ ...point }))),
  });
}
