import type { SurveyProbe } from './PlatenSurvey.ts';

/** Temperature between the probes, °C: weighted by the inverse square of the distance (Shepard 1968, from memory). A guide for the eye. */
export function betweenPlaces(
  spots: readonly { readonly probe: SurveyProbe; readonly xMm: number; readonly yMm: number }[],
  xMm: number,
  yMm: number,
): number {
  let weights = 0;
  let sum = 0;
  for (const spot of spots) {
    const weight = 1 / ((spot.xMm - xMm) ** 2 + (spot.yMm - yMm) ** 2 + 1);
    weights += weight;
    sum += weight * spot.probe.meanC;
  }
  return sum / weights;
}

/** Range of places along one side of a platen with a margin of 15 % (1 mm or more) on both ends, mm. */
export function placeScale(values: readonly number[]) {
  const least = Math.min(...values);
  const most = Math.max(...values);
  const margin = Math.max(1, (most - least) * 0.15);
  const span = most - least + 2 * margin;
  return {
    span,
    share: (value: number) => (value - least + margin) / span,
    at: (share: number) => least - margin + share * span,
  };
}
