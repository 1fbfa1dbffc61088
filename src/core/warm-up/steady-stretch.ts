import type { Samples } from '../run/collect-samples.ts';
import { comesInsideToStay } from './band-crossings.ts';
import { findRipple } from './find-ripple.ts';
import type { SmoothTrace } from './smooth-trace.ts';
import { mean, straightDrift } from './straight-drift.ts';
import type { Ripple, WithUncertainty } from './WarmUp.ts';

export interface MeasuredStretch {
  readonly fromS: number;
  readonly toS: number;
  readonly levelC: number;
  readonly driftCPerHour: WithUncertainty;
  readonly ripple: Ripple | null;
}

/**
 * The steady stretch: the latter half of the time between coming inside ± `bandC` of the first guess of the level and
 * index `end` (a cold part, or the end of the record). Null when it never settles or the half holds under eight readings.
 */
export function steadyStretch(
  samples: Samples,
  smooth: SmoothTrace,
  guessC: number,
  bandC: number,
  end: number,
): MeasuredStretch | null {
  const settledS = comesInsideToStay(smooth, guessC, bandC, end);
  if (settledS === null || end < 2) return null;
  const toS = smooth.timesS[end - 1]!;
  const middleS = (settledS + toS) / 2;
  const from = samples.timesS.findIndex((time) => time >= middleS);
  const stretch = {
    timesS: samples.timesS.subarray(from, end),
    valuesC: samples.valuesC.subarray(from, end),
  };
  const driftCPerHour = straightDrift(stretch);
  if (driftCPerHour === null) return null;
  const levelC = mean(stretch.valuesC);
  return { fromS: middleS, toS, levelC, driftCPerHour, ripple: findRipple(stretch) };
}
