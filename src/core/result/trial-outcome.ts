import { onReference, type RunsOnReference } from '../conditions/on-reference.ts';
import type { ReferenceConditions } from '../conditions/ReferenceSoak.ts';
import { soakSensitivities } from '../heating-fit/fitted-soak-s.ts';
import { countingRuns, isFromOnset, type LeftOutWhy } from '../trial/counting-runs.ts';
import { type DwellInput, type DwellOutcome, dwell } from '../trial/dwell.ts';
import { type OddRun, oddRun } from '../trial/odd-run.ts';
import { onsetDelay } from '../trial/onset-delay.ts';
import type { DwellRule, TrialRun, TrialStatistics } from '../trial/TrialResult.ts';
import type { ToleranceWish } from '../trial/tolerance-upper.ts';
import { trialStatistics } from '../trial/trial-statistics.ts';
import { defaultCommonParts } from '../uncertainty/default-common-parts.ts';
import type { CommonPart, SoakTimeBudget } from '../uncertainty/SoakTimeBudget.ts';
import { soakTimeBudget } from '../uncertainty/soak-time-budget.ts';

/** Rules that every result lists, the common one first. */
export const LISTED_RULES = [
  'mean',
  'slowest',
  'next-run',
  'tolerance',
] as const satisfies readonly DwellRule[];

export interface OutcomeSettings {
  readonly rule: DwellRule;
  readonly targetC: number;
  readonly holdS: number;
  readonly marginS: number;
  readonly timerStepS: number;
  readonly timerOffsetS: number;
  readonly timerStartsAt: 'button' | 'closing';
  /** What the tolerance rule promises; 95 % of all cycles with 95 % confidence unless stated. */
  readonly tolerance?: ToleranceWish;
  /** Parts of the uncertainty common to all runs; a new type K probe within its tolerance unless stated. */
  readonly commonParts?: readonly CommonPart[];
  /**
   * Start and platens that runs are compared at; the median of the good runs unless stated. Null for runs of more than
   * one trial: then none is judged by it.
   */
  readonly reference?: Partial<ReferenceConditions> | null;
}

/** Everything a result states about a trial: its runs, which of them count, the figures and every rule's dwell. */
export interface TrialOutcome {
  readonly runs: readonly TrialRun[];
  /** Why a run is left out, by position; null where it counts. */
  readonly leftOut: readonly (LeftOutWhy | null)[];
  readonly statistics: TrialStatistics;
  /** Delay of the onset after press closed, known from marked runs and added to soak times from the onset; else null. */
  readonly onsetDelayS: number | null;
  readonly settings: OutcomeSettings;
  readonly dwells: Readonly<Record<(typeof LISTED_RULES)[number], DwellOutcome>>;
  readonly chosen: DwellOutcome;
  /** Uncertainty budget of the mean soak time; null without a counting run. */
  readonly budget: SoakTimeBudget | null;
  /** Soak times at the trial's reference conditions, by position: beside the measured ones, never instead. */
  readonly reference: Omit<RunsOnReference, 'runs'>;
  /** A run farther out than chance allows, with what else was different about it; null under five runs or if none is. */
  readonly oddRun: OddRun | null;
}

/** Works a trial's outcome out from its runs; the same for a live trial, a replay and the store. */
export function trialOutcome(made: readonly TrialRun[], settings: OutcomeSettings): TrialOutcome {
  const { runs, ...reference } =
    settings.reference === null
      ? { runs: made, reference: { startC: null, platenC: null }, soaks: made.map(() => null) }
      : onReference(made, settings.targetC, settings.reference);
  const onsetDelayS = runs.some(isFromOnset) ? (onsetDelay(runs)?.delayS ?? null) : null;
  const { counting, leftOut } = countingRuns(runs, { onsetDelayKnown: onsetDelayS !== null });
  const statistics = trialStatistics(runs, { onsetDelayS });
  const why = new Map(leftOut.map((one) => [one.run, one.why]));
  const input: Omit<DwellInput, 'rule'> = { statistics, ...settings };
  return {
    runs,
    leftOut: runs.map((run) => why.get(run) ?? null),
    statistics,
    onsetDelayS,
    settings,
    dwells: {
      mean: dwell({ ...input, rule: 'mean' }),
      slowest: dwell({ ...input, rule: 'slowest' }),
      'next-run': dwell({ ...input, rule: 'next-run' }),
      tolerance: dwell({ ...input, rule: 'tolerance' }),
    },
    chosen: dwell({ ...input, rule: settings.rule }),
    budget: budgetOf(counting, settings),
    reference,
    oddRun: oddRun(counting),
  };
}

/** Draws of the Monte Carlo interval: 95 % limits stay within about 1 % of each other from seed to seed. */
const DRAWS = 6_000;
const SEED = 1;

function budgetOf(counting: readonly TrialRun[], settings: OutcomeSettings): SoakTimeBudget | null {
  const timed = counting.filter(({ result }) => result.soakTimeS !== null && result.crossing !== null);
  if (timed.length === 0 || timed.length !== counting.length) return null;
  const parts = (settings.commonParts ?? defaultCommonParts(settings.targetC)).map((part) =>
    withPlatenSensitivity(part, timed, settings.targetC),
  );
  return soakTimeBudget(timed, parts, { draws: DRAWS, seed: SEED });
}

/** A platen offset moves the soak time by the curve's own sensitivity, not by the slope at the crossing. */
const USUAL_SOAK_S_PER_PLATEN_C = -0.5;

function withPlatenSensitivity(part: CommonPart, runs: readonly TrialRun[], targetC: number): CommonPart {
  if (part.code !== 'platen-offset' || part.sensitivitySPerC !== undefined) return part;
  const known = runs.flatMap(({ result }) =>
    result.fit == null || result.fit.plateauC <= targetC
      ? []
      : soakSensitivities(result.fit, targetC).perPlatenC,
  );
  const sensitivitySPerC =
    known.length === 0 ? USUAL_SOAK_S_PER_PLATEN_C : known.reduce((sum, one) => sum + one, 0) / known.length;
  return { ...part, sensitivitySPerC };
}
