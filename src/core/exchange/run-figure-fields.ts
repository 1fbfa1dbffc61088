import type { ReferenceSoak } from '../conditions/ReferenceSoak.ts';
import type { RunFit } from '../heating-fit/run-fit.ts';
import type { Probe } from '../probe/Probe.ts';
import { headAmbientC } from '../recording/head-ambient.ts';
import type { RecordingHead } from '../recording/RecordingEntry.ts';
import type { RunResult } from '../run/RunResult.ts';
import { type ExportField, field } from './ExportField.ts';

/** What the figures of a run are taken from. */
export interface RunFigures {
  readonly run: { readonly result: RunResult };
  /** At the trial's reference conditions; null where the run cannot be put on them. */
  readonly reference: ReferenceSoak | null;
  /** Head of its recording; null where there is none. */
  readonly head: RecordingHead | null;
  /** Probe on each channel, channel 1 first. */
  readonly probes: readonly (Probe | null)[];
}

const at = (fit: RunFit | null | undefined, place: number): number | null =>
  fit == null ? null : Math.sqrt(Math.max(0, fit.covariance[place]?.[place] ?? 0));

/** What a run was made under, and what its curve, its reference conditions and its cure give. Standard uncertainties throughout. */
export const RUN_FIGURE_FIELDS: readonly ExportField<RunFigures>[] = [
  field('targetC', 'bond-line target stated in the recording', ({ head }) => head?.targetC ?? null),
  field('ambientC', 'room temperature stated in the recording', ({ head }) =>
    head === null ? null : (headAmbientC(head) ?? null),
  ),
  field(
    'upperPlatenSetPointC',
    'set point of the upper platen stated in the recording',
    ({ head }) => head?.platenSetPointC?.upper ?? null,
  ),
  field(
    'lowerPlatenSetPointC',
    'set point of the lower platen stated in the recording',
    ({ head }) => head?.platenSetPointC?.lower ?? null,
  ),
  field('operatorInitials', 'who made the recording', ({ head }) => head?.operatorInitials ?? null),
  field('channels', 'what each channel is laid on, channel 1 first', ({ head }) => head?.roles ?? null),
  field('probes', 'probe on each channel, channel 1 first; - where not stated', ({ probes }) =>
    probes.length === 0 ? null : probes.map((probe) => probe?.name ?? '-'),
  ),
  field(
    'crossingsByChannel',
    'crossing of each bond-line channel: channel, what it is laid on, s',
    ({ run }) =>
      run.result.crossings.map(
        ({ channel, role, crossing }) => `${channel} ${role} ${crossing === null ? '-' : crossing.timeS}`,
      ),
  ),
  field('closingSources', 'every source of press closed: what told it, s', ({ run }) =>
    (run.result.pressClosed?.all ?? []).map(({ by, timeS }) => `${by} ${timeS}`),
  ),
  field(
    'closingDisagreementS',
    'largest difference between two sources of press closed',
    ({ run }) => run.result.pressClosed?.disagreementS ?? null,
  ),
  field(
    'provisionalCrossingS',
    'crossing as it was told while the run went on',
    ({ run }) => run.result.provisionalCrossing?.timeS ?? null,
  ),
  field('holdDips', 'dips below target: from s, to s, lowest °C', ({ run }) =>
    (run.result.hold?.dips ?? []).map(({ fromS, toS, lowestC }) => `${fromS} ${toS} ${lowestC}`),
  ),
  field(
    'soakAtReferenceS',
    'soak time at the trial’s reference conditions; beside the measured one, never instead',
    ({ reference }) => reference?.soakAtReferenceS ?? null,
  ),
  field('soakShiftByStartS', 'of which by the start', ({ reference }) => reference?.byStartS ?? null),
  field('soakShiftByPlatensS', 'of which by the platens', ({ reference }) => reference?.byPlatenS ?? null),
  field(
    'soakPerStartSPerC',
    'change of the soak time with the start',
    ({ reference }) => reference?.perStartC ?? null,
  ),
  field(
    'soakPerPlatensSPerC',
    'change of the soak time with the platens',
    ({ reference }) => reference?.perPlatenC ?? null,
  ),
  field('fitPlateauC', 'heating curve: plateau', ({ run }) => run.result.fit?.plateauC ?? null),
  field('fitPlateauStandardUncertaintyC', 'its uncertainty', ({ run }) => at(run.result.fit, 0)),
  field(
    'fitTimeConstantS',
    'heating curve: time constant',
    ({ run }) => run.result.fit?.timeConstantS ?? null,
  ),
  field('fitTimeConstantStandardUncertaintyS', 'its uncertainty', ({ run }) => at(run.result.fit, 1)),
  field(
    'fitDelayS',
    'heating curve: press closed to its departure',
    ({ run }) => run.result.fit?.delayS ?? null,
  ),
  field('fitDelayStandardUncertaintyS', 'its uncertainty', ({ run }) => at(run.result.fit, 2)),
  field('fitStartC', 'heating curve: start', ({ run }) => run.result.fit?.startC ?? null),
  field(
    'fitResidualSdC',
    'heating curve: residual deviation',
    ({ run }) => run.result.fit?.residualSdC ?? null,
  ),
  field(
    'fitMisfitC',
    'heating curve: what it misses systematically',
    ({ run }) => run.result.fit?.misfitC ?? null,
  ),
  field(
    'fitRunsTestZ',
    'heating curve: runs test of its residuals',
    ({ run }) => run.result.fit?.runsZ ?? null,
  ),
  field(
    'fitLag1Autocorrelation',
    'heating curve: autocorrelation of its residuals at lag 1',
    ({ run }) => run.result.fit?.lag1Autocorrelation ?? null,
  ),
  field('fitVerdict', 'whether the curve describes the run', ({ run }) => run.result.fit?.verdict ?? null),
  field(
    'cureEquivalentS',
    'equivalent time of cure at the reference temperature, press closed',
    ({ run }) => run.result.cure?.equivalentS ?? null,
  ),
  field(
    'cureReferenceC',
    'reference temperature of the adhesive’s data sheet',
    ({ run }) => run.result.cure?.referenceC ?? null,
  ),
  field(
    'cureActivationEnergyKjPerMol',
    'activation energy of the data sheet',
    ({ run }) => run.result.cure?.activationEnergyKjPerMol ?? null,
  ),
  field(
    'cureFromC',
    'lower end of what the data sheet holds for',
    ({ run }) => run.result.cure?.rangeC.from ?? null,
  ),
  field('cureToC', 'upper end of it', ({ run }) => run.result.cure?.rangeC.to ?? null),
  field(
    'cureBelowRangeS',
    'time below that range, not counted',
    ({ run }) => run.result.cure?.belowRangeS ?? null,
  ),
  field(
    'cureAboveRangeS',
    'time above it, counted at the rate of its end',
    ({ run }) => run.result.cure?.aboveRangeS ?? null,
  ),
  field('cureMissingS', 'gaps and faults not bridged', ({ run }) => run.result.cure?.missingS ?? null),
];
