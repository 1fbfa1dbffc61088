import { RUN_RULE_VERSION, type RunResult } from '../run/RunResult.ts';

/** Stands for a recording in which no closing of the press was found: unusable, and says why. */
export function noRunResult(readings: number, endedS: number): RunResult {
  const result: RunResult = {
    ruleVersion: RUN_RULE_VERSION,
    runNumber: 1,
    pressClosed: null,
    onset: null,
    provisionalCrossing: null,
    crossing: null,
    crossings: [],
    soakTimeS: null,
    soakTimeStandardUncertaintyS: null,
    openedS: null,
    endedS,
    startC: null,
    peakC: null,
    lowestAfterCrossingC: null,
    hold: null,
    platenAtClosingC: { upper: null, lower: null },
    conditions: { ring: null, coating: null, carrierId: null, probe: null },
    notes: [],
    verdict: 'unusable',
    reasons: [{ code: readings === 0 ? 'no-readings' : 'no-press-closed', severity: 'unusable', facts: {} }],
  };
  return Object.freeze(result);
}
