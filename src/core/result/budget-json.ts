import type { BudgetLine, SoakTimeBudget } from '../uncertainty/SoakTimeBudget.ts';

/** The uncertainty budget as `--json` prints it; seconds of soak time throughout. */
export function budgetJson(budget: SoakTimeBudget | null): Record<string, unknown> | null {
  if (budget === null) return null;
  const { total, common } = budget;
  return {
    meanSoakS: budget.meanSoakS,
    standardUncertaintyS: total.standardUncertaintyS,
    expandedUncertaintyS: total.expandedUncertaintyS,
    probability: total.probability,
    method: total.method,
    coverageFactor: total.coverageFactor,
    effectiveDegreesOfFreedom: finiteOrNull(total.effectiveDegreesOfFreedom),
    spreadUnknown: budget.spreadUnknown,
    commonPartUpperS: common?.upperS ?? null,
    parts: budget.lines.map(lineJson),
    ofWhichRunToRun: budget.ofWhich.map(lineJson),
  };
}

function lineJson(line: BudgetLine): Record<string, unknown> {
  return {
    part: line.code,
    standardUncertaintyS: line.standardUncertaintyS,
    expandedUncertaintyS: line.expandedS,
    shareOfVariance: line.share,
    shrinkBy: line.remedy?.action ?? null,
    expandedThenS: line.remedy?.expandedThenS ?? null,
  };
}

/** Infinite degrees of freedom (a stated limit) have no figure in JSON. */
function finiteOrNull(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}
