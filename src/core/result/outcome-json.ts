import { dwellSentences } from '../text/dwell-text.ts';
import { oddRunText } from '../text/trial-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import { budgetJson } from './budget-json.ts';
import { figuresJson } from './figures-json.ts';
import { runJson } from './run-json.ts';
import { LISTED_RULES, type TrialOutcome } from './trial-outcome.ts';

/** A trial's outcome as `--json` prints it: units in the key names, absent values null. */
export function outcomeJson(outcome: TrialOutcome, unit: TemperatureUnit): Record<string, unknown> {
  const { statistics, settings, chosen } = outcome;
  return {
    runs: outcome.runs.map((run, index) => ({
      ...runJson(run, outcome.leftOut[index] === null, unit),
      ...figuresJson(run.result, outcome.reference.soaks[index] ?? null),
    })),
    trial: {
      runs: statistics.runs,
      meanSoakS: statistics.meanSoakS,
      sdSoakS: statistics.sdSoakS,
      minSoakS: statistics.minSoakS,
      maxSoakS: statistics.maxSoakS,
      rangeSoakS: statistics.rangeSoakS,
      meanCi95S: statistics.meanCi95S,
      nextRunUpper95S: statistics.nextRunUpper95S,
      moreRunsForWidth: statistics.moreRunsForWidth,
      wantedHalfWidthS: statistics.wantedHalfWidthS,
      partSpreadMissing: statistics.partSpreadMissing,
      fromOnset: statistics.fromOnset,
      onsetDelayAddedS: outcome.onsetDelayS,
      targetC: settings.targetC,
    },
    dwell: {
      rule: settings.rule,
      soakS: chosen.dwell?.soakS ?? null,
      holdS: settings.holdS,
      marginS: settings.marginS,
      totalS: chosen.dwell?.totalS ?? null,
      timerSetS: chosen.dwell?.timerSetS ?? null,
      provisional: chosen.dwell?.provisional ?? null,
      reason: chosen.reason,
      byRuleTotalS: Object.fromEntries(
        LISTED_RULES.map((rule) => [rule, outcome.dwells[rule].dwell?.totalS ?? null]),
      ),
      sentences: dwellSentences({ statistics, ...settings }),
    },
    referenceStartC: outcome.reference.reference.startC,
    referencePlatenC: outcome.reference.reference.platenC,
    uncertainty: budgetJson(outcome.budget),
    oddRun:
      outcome.oddRun === null
        ? null
        : { run: outcome.runs.indexOf(outcome.oddRun.run) + 1, sentence: oddRunText(outcome.oddRun, unit) },
  };
}
