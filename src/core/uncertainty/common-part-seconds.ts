import { StatisticsError } from '../statistics/StatisticsError.ts';
import { limitPart, secondsAtCrossing } from './limit-part.ts';
import type { CommonPart } from './SoakTimeBudget.ts';
import type { UncertaintyPart } from './UncertaintyPart.ts';

/** A stated common part in seconds of soak time: limits become rectangular, standard uncertainties stay normal. */
export function commonPartSeconds(
  { code, stated, sensitivitySPerC }: Pick<CommonPart, 'code' | 'stated' | 'sensitivitySPerC'>,
  slopeCPerS: number,
): UncertaintyPart {
  const seconds = (differenceC: number) =>
    sensitivitySPerC === undefined
      ? secondsAtCrossing(differenceC, slopeCPerS)
      : Math.abs(differenceC * sensitivitySPerC);
  if ('limitC' in stated) return limitPart(code, seconds(stated.limitC));
  if ('limitS' in stated) return limitPart(code, stated.limitS);
  const { degreesOfFreedom = Number.POSITIVE_INFINITY } = stated;
  const standardUncertaintyS =
    'standardUncertaintyC' in stated ? seconds(stated.standardUncertaintyC) : stated.standardUncertaintyS;
  if (!(Number.isFinite(standardUncertaintyS) && standardUncertaintyS >= 0 && degreesOfFreedom > 0)) {
    throw new StatisticsError(
      'option-out-of-range',
      `${code}: standard uncertainty must be 0 or more, came ${standardUncertaintyS} s with ${degreesOfFreedom} degrees of freedom`,
      'Take the standard uncertainty from the certificate: expanded uncertainty divided by its coverage factor',
    );
  }
  const shape = Number.isFinite(degreesOfFreedom) ? 'student' : 'normal';
  return { code, shape, standardUncertaintyS, degreesOfFreedom };
}
