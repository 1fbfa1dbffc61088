import type { RunConditions } from '../../../src/core/reading/StreamEvent.ts';
import type { ClosingSource, RunReason, Verdict } from '../../../src/core/run/RunResult.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';

const NOT_STATED: RunConditions = { ring: null, coating: null, carrierId: null, probe: null };

/** Each run has a peak of its own: two with all the same figures are the same readings. */
let made = 0;

/** A finished run with a given soak time for tests of the trial; all else plausible. */
export function trialRun(
  soakTimeS: number | null,
  change: {
    readonly verdict?: Verdict;
    readonly reasons?: readonly RunReason[];
    readonly by?: ClosingSource;
    readonly onsetAfterClosingS?: number;
    readonly conditions?: Partial<RunConditions>;
    readonly decision?: TrialRun['decision'];
    readonly slopeCPerS?: number;
    readonly peakC?: number;
  } = {},
): TrialRun {
  const {
    verdict = 'good',
    reasons = [],
    by = 'key',
    decision = { kind: 'automatic' },
    slopeCPerS = 1.37,
  } = change;
  const closedS = 10;
  const closed = { timeS: closedS, standardUncertaintyS: 0.1 };
  const crossing =
    soakTimeS === null ? null : { timeS: closedS + soakTimeS, standardUncertaintyS: 0.05, slopeCPerS };
  const onset =
    change.onsetAfterClosingS === undefined
      ? null
      : { timeS: closedS + change.onsetAfterClosingS, standardUncertaintyS: 0.2 };
  return Object.freeze({
    source: 'run',
    decision,
    result: Object.freeze({
      ruleVersion: 1,
      runNumber: 1,
      pressClosed: { ...closed, by, all: [{ ...closed, by }], disagreementS: null },
      onset,
      provisionalCrossing: crossing,
      crossing,
      crossings: [],
      soakTimeS,
      soakTimeStandardUncertaintyS: soakTimeS === null ? null : 0.11,
      openedS: 200,
      endedS: 205,
      startC: 24,
      peakC: change.peakC ?? 220 + (made++ % 1000) / 1000,
      lowestAfterCrossingC: 177,
      hold: null,
      platenAtClosingC: { upper: 232, lower: 232 },
      conditions: { ...NOT_STATED, ...change.conditions },
      notes: [],
      verdict,
      reasons,
    }),
  });
}

/** A reason that makes a run suspect. */
export function suspectFor(code: RunReason['code']): Pick<TrialRun['result'], 'verdict' | 'reasons'> {
  return { verdict: 'suspect', reasons: [{ code, severity: 'suspect', facts: {} }] };
}
