export interface TemperatureRange {
  readonly lowC: number;
  readonly highC: number;
  /** Lowest and highest reading that lies outside; null where none does. */
  readonly below: number | null;
  readonly above: number | null;
}

/** One reading in this many may be a spike of a broken wire or a loose plug. */
const SPIKE_SHARE = 0.01;
/** A spike farther out than this share of the span is left outside, so that the run itself stays readable. */
const FAR = 0.5;

/**
 * Range of a temperature axis, °C: all readings and the target, with a little room; readings far outside the span of
 * the others (full-scale values of a broken wire) are left outside and told.
 */
export function temperatureRange(temperaturesC: readonly number[], targetC: number): TemperatureRange {
  const sorted = Float64Array.from(temperaturesC).sort();
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? targetC;
  const low = Math.min(targetC, at(SPIKE_SHARE));
  const high = Math.max(targetC, at(1 - SPIKE_SHARE));
  const far = FAR * (high - low) + 20;
  const below = at(0) < low - far ? at(0) : null;
  const above = at(1) > high + far ? at(1) : null;
  const from = below === null ? Math.min(low, at(0)) : low;
  const to = above === null ? Math.max(high, at(1)) : high;
  const room = (to - from) * 0.05 + 1;
  return { lowC: from - room, highC: to + room, below, above };
}
