import type { RunResult } from '../run/RunResult.ts';
import { runReasonText } from '../text/run-reasons.ts';
import type { TrialRun } from '../trial/TrialResult.ts';

/** A run as results print it: units in the key names, absent values null, times from the first reading. */
export function runJson(run: TrialRun, counted: boolean, unit: 'F' | 'C'): Record<string, unknown> {
  const { result } = run;
  const grave = result.reasons.filter((reason) => reason.severity !== 'note');
  const notes = result.reasons.filter((reason) => reason.severity === 'note');
  return {
    source: run.source,
    runNumber: result.runNumber,
    pressClosedS: result.pressClosed?.timeS ?? null,
    crossingS: result.crossing?.timeS ?? null,
    soakTimeS: result.soakTimeS,
    soakTimeStandardUncertaintyS: result.soakTimeStandardUncertaintyS,
    startC: result.startC,
    peakC: result.peakC,
    verdict: result.verdict,
    reasons: grave.map((reason) => runReasonText(reason, { unit })),
    reasonCodes: grave.map((reason) => reason.code),
    notes: [...notes.map((reason) => runReasonText(reason, { unit })), ...result.notes],
    noteCodes: notes.map((reason) => reason.code),
    counted,
    decision: run.decision.kind,
    decisionReason: run.decision.kind === 'automatic' ? null : run.decision.reason,
    ...details(result),
  };
}

function details(result: RunResult): Record<string, unknown> {
  return {
    pressClosedBy: result.pressClosed?.by ?? null,
    pressClosedSources: (result.pressClosed?.all ?? []).map((source) => ({
      by: source.by,
      timeS: source.timeS,
    })),
    onsetS: result.onset?.timeS ?? null,
    provisionalCrossingS: result.provisionalCrossing?.timeS ?? null,
    crossingStandardUncertaintyS: result.crossing?.standardUncertaintyS ?? null,
    slopeAtCrossingCPerS: result.crossing?.slopeCPerS ?? null,
    crossingsByChannel: result.crossings.map((one) => ({
      channel: one.channel,
      role: one.role,
      crossingS: one.crossing?.timeS ?? null,
    })),
    openedS: result.openedS,
    endedS: result.endedS,
    lowestAfterCrossingC: result.lowestAfterCrossingC,
    holdCountedS: result.hold?.countedS ?? null,
    holdLongestUnbrokenS: result.hold?.longestUnbrokenS ?? null,
    holdVerified: result.hold?.verified ?? null,
    upperPlatenAtClosingC: result.platenAtClosingC.upper,
    lowerPlatenAtClosingC: result.platenAtClosingC.lower,
    ring: result.conditions.ring,
    coating: result.conditions.coating,
    carrierId: result.conditions.carrierId,
    probe: result.conditions.probe,
    ruleVersion: result.ruleVersion,
  };
}
