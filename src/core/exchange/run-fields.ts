import type { StoredTrial } from '../store/Store.ts';
import { runReasonText } from '../text/run-reasons.ts';
import type { LeftOutWhy } from '../trial/counting-runs.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import { type ExportField, field } from './ExportField.ts';
import { RUN_FIGURE_FIELDS, type RunFigures } from './run-figure-fields.ts';

/** A stored run with what is known of its trial. */
export interface RunRow extends RunFigures {
  readonly trial: StoredTrial;
  readonly run: TrialRun & { readonly recordingId: string };
  /** 1, 2, … within its trial. */
  readonly runInTrial: number;
  /** Why it does not enter the mean; null where it does. */
  readonly leftOut: LeftOutWhy | null;
}

/** Fields of `export runs`, one row a run. Times count from the recording's first reading. */
export const RUN_FIELDS: readonly ExportField<RunRow>[] = [
  field('trialId', 'trial', ({ trial }) => trial.trialId),
  field('assembly', 'assembly', ({ trial }) => trial.assemblyName),
  field('press', 'press', ({ trial }) => trial.pressName),
  field('trialStartedAt', 'start of the trial, date and time', ({ trial }) => trial.startedAt),
  field('simulated', 'true for readings of the simulated reader', ({ trial }) => trial.simulated),
  field('runInTrial', 'number of the run in its trial', ({ runInTrial }) => runInTrial),
  field('recordingId', 'recording that holds the trace', ({ run }) => run.recordingId),
  field('runNumber', 'number of the run in its recording', ({ run }) => run.result.runNumber),
  field('counted', 'true where the run enters the mean', ({ leftOut }) => leftOut === null),
  field('leftOutWhy', 'why it does not enter the mean', ({ leftOut }) => leftOut),
  field('verdict', 'good, suspect or unusable', ({ run }) => run.result.verdict),
  field('decision', 'automatic, set-aside or taken-in', ({ run }) => run.decision.kind),
  field('decisionReason', 'reason given for the decision', ({ run }) =>
    run.decision.kind === 'automatic' ? null : run.decision.reason,
  ),
  field('reasonCodes', 'codes of reasons and notes', ({ run }) => run.result.reasons.map((one) => one.code)),
  field('reasons', 'reasons and notes in words', ({ run }) =>
    run.result.reasons.map((reason) => runReasonText(reason, { unit: 'C' })),
  ),
  field('notes', 'notes of the operator', ({ run }) => run.result.notes),
  field('soakTimeS', 'soak time: crossing less press closed', ({ run }) => run.result.soakTimeS),
  field(
    'soakTimeStandardUncertaintyS',
    'standard uncertainty of the soak time, per-run part only',
    ({ run }) => run.result.soakTimeStandardUncertaintyS,
  ),
  field('pressClosedS', 'press closed', ({ run }) => run.result.pressClosed?.timeS ?? null),
  field('pressClosedBy', 'contact, key, option or onset', ({ run }) => run.result.pressClosed?.by ?? null),
  field('onsetS', 'onset of the rise', ({ run }) => run.result.onset?.timeS ?? null),
  field('crossingS', 'crossing of the target', ({ run }) => run.result.crossing?.timeS ?? null),
  field(
    'crossingStandardUncertaintyS',
    'standard uncertainty of the crossing',
    ({ run }) => run.result.crossing?.standardUncertaintyS ?? null,
  ),
  field(
    'slopeAtCrossingCPerS',
    'rate of rise at the crossing',
    ({ run }) => run.result.crossing?.slopeCPerS ?? null,
  ),
  field('openedS', 'press opened', ({ run }) => run.result.openedS),
  field('endedS', 'end of the run', ({ run }) => run.result.endedS),
  field('startC', 'bond line at press closed', ({ run }) => run.result.startC),
  field('peakC', 'highest bond-line temperature', ({ run }) => run.result.peakC),
  field(
    'lowestAfterCrossingC',
    'lowest bond-line temperature after the crossing',
    ({ run }) => run.result.lowestAfterCrossingC,
  ),
  field('holdWantedS', 'hold wanted', ({ run }) => run.result.hold?.wantedS ?? null),
  field('holdCountedS', 'hold counted', ({ run }) => run.result.hold?.countedS ?? null),
  field(
    'holdLongestUnbrokenS',
    'longest unbroken time at or above target',
    ({ run }) => run.result.hold?.longestUnbrokenS ?? null,
  ),
  field(
    'holdTotalAboveS',
    'whole time at or above target',
    ({ run }) => run.result.hold?.totalAboveS ?? null,
  ),
  field(
    'holdVerified',
    'true where the hold was met and seen throughout',
    ({ run }) => run.result.hold?.verified ?? null,
  ),
  field('upperPlatenAtClosingC', 'upper platen at closing', ({ run }) => run.result.platenAtClosingC.upper),
  field('lowerPlatenAtClosingC', 'lower platen at closing', ({ run }) => run.result.platenAtClosingC.lower),
  field('ring', 'fresh or re-used', ({ run }) => run.result.conditions.ring),
  field('coating', 'coated or bare', ({ run }) => run.result.conditions.coating),
  field('carrierId', 'carrier', ({ run }) => run.result.conditions.carrierId),
  field('probe', 're-laid or left', ({ run }) => run.result.conditions.probe),
  ...RUN_FIGURE_FIELDS,
  field('ruleVersion', 'version of the rules behind these figures', ({ run }) => run.result.ruleVersion),
];
