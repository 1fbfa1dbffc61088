import type { Reading } from '../reading/StreamEvent.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { ChannelAtRest } from './ReadyCheck.ts';

/**
 * One channel over a stretch of readings: mean, drift and scatter about a straight line by least squares. A stretch
 * under three temperatures has no scatter, under two no drift. `channel` counts from 1.
 */
export function channelAtRest(
  readings: readonly Reading[],
  channel: number,
  role: ChannelRole,
): ChannelAtRest {
  const latest = readings.at(-1)?.values[channel - 1] ?? null;
  const points = readings.flatMap(({ timeS, values }) => {
    const value = values[channel - 1];
    return value?.kind === 'temperature' && Number.isFinite(value.temperatureC)
      ? [{ timeS, temperatureC: value.temperatureC }]
      : [];
  });
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined)
    return { channel, role, latest, meanC: null, noiseC: null, driftCPerS: null, overS: 0 };
  const n = points.length;
  const meanS = points.reduce((sum, p) => sum + p.timeS - first.timeS, 0) / n;
  const meanC = points.reduce((sum, p) => sum + p.temperatureC, 0) / n;
  let [stt, sty, syy] = [0, 0, 0];
  for (const { timeS, temperatureC } of points) {
    const t = timeS - first.timeS - meanS;
    const y = temperatureC - meanC;
    stt += t * t;
    sty += t * y;
    syy += y * y;
  }
  const driftCPerS = stt > 0 ? sty / stt : null;
  const noiseC =
    n < 3 || driftCPerS === null ? null : Math.sqrt(Math.max(0, syy - driftCPerS * sty) / (n - 2));
  return { channel, role, latest, meanC, noiseC, driftCPerS, overS: last.timeS - first.timeS };
}
