import type { ReferenceSoak } from '../conditions/ReferenceSoak.ts';
import type { RunFit } from '../heating-fit/run-fit.ts';
import type { RunResult } from '../run/RunResult.ts';

/**
 * What a run's curve, reference conditions, hold and cure give, for `--json`. `soakAtReferenceS` stands beside the
 * measured `soakTimeS`, never instead. Standard uncertainties throughout.
 */
export function figuresJson(result: RunResult, soak: ReferenceSoak | null): Record<string, unknown> {
  const { fit, cure, hold } = result;
  return {
    soakAtReferenceS: soak?.soakAtReferenceS ?? null,
    soakShiftByStartS: soak?.byStartS ?? null,
    soakShiftByPlatensS: soak?.byPlatenS ?? null,
    soakPerStartSPerC: soak?.perStartC ?? null,
    soakPerPlatensSPerC: soak?.perPlatenC ?? null,
    heatingCurve: fit == null ? null : fitJson(fit),
    timeAtOrAboveTargetS: hold?.totalAboveS ?? null,
    cureEquivalentS: cure?.equivalentS ?? null,
    cureReferenceC: cure?.referenceC ?? null,
    cureBelowRangeS: cure?.belowRangeS ?? null,
    cureAboveRangeS: cure?.aboveRangeS ?? null,
    cureMissingS: cure?.missingS ?? null,
  };
}

function fitJson(fit: RunFit): Record<string, unknown> {
  const standardUncertainty = (at: number): number => Math.sqrt(Math.max(0, fit.covariance[at]?.[at] ?? 0));
  return {
    plateauC: fit.plateauC,
    plateauStandardUncertaintyC: standardUncertainty(0),
    timeConstantS: fit.timeConstantS,
    timeConstantStandardUncertaintyS: standardUncertainty(1),
    delayS: fit.delayS,
    delayStandardUncertaintyS: standardUncertainty(2),
    startC: fit.startC,
    residualSdC: fit.residualSdC,
    misfitC: fit.misfitC,
    runsTestZ: fit.runsZ,
    lag1Autocorrelation: fit.lag1Autocorrelation,
    verdict: fit.verdict,
  };
}
