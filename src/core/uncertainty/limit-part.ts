import { StatisticsError } from '../statistics/StatisticsError.ts';
import type { PartCode, UncertaintyPart } from './UncertaintyPart.ts';

/**
 * A part known only by its limits ±a, all values between equally likely: standard uncertainty a/√3.
 * Example: ±2.2 °C at 1.37 °C/s is ±1.606 s, standard 0.93 s. Source: JCGM 100 (GUM), 4.3.7.
 */
export function limitPart(code: PartCode, limitS: number): UncertaintyPart {
  if (!(Number.isFinite(limitS) && limitS >= 0)) {
    throw new StatisticsError(
      'option-out-of-range',
      `${code}: limit must be 0 s or more, came ${limitS}`,
      'Give the limit as ± without a sign',
    );
  }
  return {
    code,
    shape: 'rectangular',
    standardUncertaintyS: limitS / Math.sqrt(3),
    degreesOfFreedom: Number.POSITIVE_INFINITY,
  };
}

/**
 * A limit or standard uncertainty in °C turned into seconds by the heating rate at the crossing: a probe that
 * is off by d °C sees the target d ÷ slope seconds early or late. Refuses a slope of 0 or less.
 */
export function secondsAtCrossing(differenceC: number, slopeCPerS: number): number {
  if (Number.isFinite(differenceC) && Number.isFinite(slopeCPerS) && slopeCPerS > 0)
    return differenceC / slopeCPerS;
  throw new StatisticsError(
    'option-out-of-range',
    `the heating rate at the crossing must be above 0 °C/s, came ${slopeCPerS}`,
    'Use runs that crossed the target while heating',
  );
}
