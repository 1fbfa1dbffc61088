import { StatisticsError } from '../statistics/StatisticsError.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import { combinedStandardUncertaintyS } from './combined-standard-uncertainty.ts';
import { commonPartSeconds } from './common-part-seconds.ts';
import { type ExpandedOptions, expandedUncertainty } from './expanded-uncertainty.ts';
import { runParts } from './run-parts.ts';
import type { BudgetLine, CommonPart, SoakTimeBudget } from './SoakTimeBudget.ts';
import type { UncertaintyPart } from './UncertaintyPart.ts';

/**
 * Uncertainty budget of a trial's mean soak time, after the GUM (JCGM 100). The spread of the runs over √n
 * holds everything that varies from run to run; what each run's crossing and closing leave open is shown as
 * "of which" and never added again. Parts common to all runs are added once, undivided by n, turned into
 * seconds by the mean slope at the crossing: averaging does not help against them.
 * Refuses runs without soak time or slope; take the runs that count.
 */
export function soakTimeBudget(
  counting: readonly TrialRun[],
  commonParts: readonly CommonPart[],
  options: ExpandedOptions = {},
): SoakTimeBudget {
  const { meanSoakS, slopeCPerS, own, ofWhich } = runParts(counting);
  const common = commonParts.map((part) => commonPartSeconds(part, slopeCPerS));
  const added: readonly UncertaintyPart[] = [own, ...common];
  const combined = combinedStandardUncertaintyS(added);
  if (combined === 0) {
    throw new StatisticsError(
      'option-out-of-range',
      'the budget holds no part above 0 s',
      'State at least the tolerance of the probe',
    );
  }
  const alone = (part: UncertaintyPart) => expandedUncertainty([part], options).expandedUncertaintyS;
  const line = (part: UncertaintyPart, stated?: CommonPart): BudgetLine => ({
    ...part,
    expandedS: alone(part),
    share: part.standardUncertaintyS ** 2 / combined ** 2,
    remedy:
      stated?.remedy === undefined
        ? null
        : {
            action: stated.remedy.action,
            expandedThenS: alone(commonPartSeconds({ ...stated, stated: stated.remedy.stated }, slopeCPerS)),
          },
  });
  const lines = [line(own), ...common.map((part, index) => line(part, commonParts[index]))];
  return {
    meanSoakS,
    runs: counting.length,
    lines: lines.sort((a, b) => b.standardUncertaintyS - a.standardUncertaintyS),
    ofWhich: ofWhich.map((part) => ({ ...line(part), share: null })),
    total: expandedUncertainty(added, options),
    common: common.length === 0 ? null : expandedUncertainty(common, options),
    spreadUnknown: counting.length < 2,
  };
}
