import type { Probe } from './Probe.ts';
import { probeErrorAt } from './probe-error-at.ts';

/** Turns what a probe reads into what it should read, both °C. */
export type ProbeCorrection = (readC: number) => number;

/**
 * Correction of a probe's readings by its own calibration: reading less error, the error interpolated between points
 * at the temperature that results (three rounds; errors change slowly). Null for a probe without points: a tolerance
 * says how far off a probe may be, not which way.
 */
export function probeCorrection(probe: Probe): ProbeCorrection | null {
  if (probe.points.length === 0) return null;
  return (readC) => {
    let trueC = readC;
    for (let round = 0; round < 3; round += 1) trueC = readC - (probeErrorAt(probe, trueC)?.errorC ?? 0);
    return trueC;
  };
}
