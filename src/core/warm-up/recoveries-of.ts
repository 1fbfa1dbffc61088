import type { Dip } from './find-dips.ts';
import type { SmoothTrace } from './smooth-trace.ts';
import type { Closing, Recovery } from './WarmUp.ts';

/** A closing belongs to a dip that starts within this time of it, s: before by the smoothing, after by the heat's way. */
const BEFORE_S = 10;
const AFTER_S = 90;

/** Dips as recoveries: part in by contact or key where one belongs to the dip, else by the trace itself. */
export function recoveriesOf(
  { timesS, valuesC }: SmoothTrace,
  dips: readonly Dip[],
  levelC: number,
  closings: readonly Closing[],
  powerOnS: number,
  withinC: number,
): readonly Recovery[] {
  return dips.map(({ fromIndex, lowestIndex, backIndex }) => {
    const fallS = timesS[fromIndex]!;
    const told = closings.findLast(({ timeS }) => timeS <= fallS + BEFORE_S && timeS >= fallS - AFTER_S);
    const partInS = told?.timeS ?? fallS;
    return {
      partInS: partInS - powerOnS,
      by: told?.by ?? 'trace',
      depthC: levelC - valuesC[lowestIndex]!,
      lowestAfterS: timesS[lowestIndex]! - partInS,
      recoveryTimeS: backIndex === null ? null : timesS[backIndex]! - partInS,
      withinC,
    };
  });
}
