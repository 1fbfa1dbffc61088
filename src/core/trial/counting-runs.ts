import type { TrialRun } from './TrialResult.ts';

export type LeftOutWhy =
  | 'unusable'
  | 'suspect'
  | 'set-aside'
  /** Timed from the onset of the rise while others are timed from a mark: the two never mix. */
  | 'from-onset'
  /** The readings of an earlier run once more: a file saved again, or one recording under two names. */
  | 'same-readings'
  | 'no-soak-time';

export interface CountingRuns {
  /** Runs that enter the mean, in the order made. */
  readonly counting: readonly TrialRun[];
  readonly leftOut: readonly { readonly run: TrialRun; readonly why: LeftOutWhy }[];
  /** True when the counting runs are all timed from the onset, for want of any marked run. */
  readonly fromOnset: boolean;
}

/**
 * Which runs of a trial enter its mean. A good run counts; a suspect one only when taken in with a reason;
 * an unusable one or one set aside never. Soak times from the onset of the rise lack the heat's delay through
 * the part and are short: they stay out as soon as one marked run counts, and are averaged among themselves
 * only when no marked run does. With `onsetDelayKnown` (from marked runs of the same assembly, see `onsetDelay`)
 * they may join the marked ones, for then the delay is added to each. Readings that came twice count once.
 */
export function countingRuns(
  runs: readonly TrialRun[],
  { onsetDelayKnown = false }: { readonly onsetDelayKnown?: boolean } = {},
): CountingRuns {
  const again = readingsAgain(runs);
  const sorted = runs.map((run) => ({
    run,
    why: whyLeftOut(run) ?? (again.has(run) ? ('same-readings' as const) : null),
  }));
  const fit = sorted.filter((one) => one.why === null).map((one) => one.run);
  const marked = fit.filter((run) => !isFromOnset(run));
  const fromOnset = marked.length === 0 && fit.length > 0 && !onsetDelayKnown;
  const counting = fromOnset || onsetDelayKnown ? fit : marked;
  const leftOut = sorted.flatMap(({ run, why }) => {
    if (counting.includes(run)) return [];
    return [{ run, why: why ?? ('from-onset' as const) }];
  });
  return { counting, leftOut, fromOnset };
}

/** True when the run's press closed is known from the onset of the rise only. */
export function isFromOnset(run: TrialRun): boolean {
  return run.result.pressClosed?.by === 'onset';
}

/**
 * Runs whose figures are those of an earlier one to the last digit: soak time, slope and uncertainty of the crossing,
 * start and peak. No two closings give that; the same readings do, whatever file they came in.
 */
function readingsAgain(runs: readonly TrialRun[]): ReadonlySet<TrialRun> {
  const seen = new Set<string>();
  const again = new Set<TrialRun>();
  for (const run of runs) {
    const { soakTimeS, crossing, startC, peakC } = run.result;
    if (soakTimeS === null || crossing === null) continue;
    const figures = [soakTimeS, crossing.slopeCPerS, crossing.standardUncertaintyS, startC, peakC].join(' ');
    if (seen.has(figures)) again.add(run);
    seen.add(figures);
  }
  return again;
}

function whyLeftOut({ result, decision }: TrialRun): LeftOutWhy | null {
  if (decision.kind === 'set-aside') return 'set-aside';
  if (result.verdict === 'unusable') return 'unusable';
  if (result.soakTimeS === null || !Number.isFinite(result.soakTimeS)) return 'no-soak-time';
  if (decision.kind === 'taken-in' || result.verdict === 'good') return null;
  // Suspect for the onset alone: fit to be averaged with its like, never with marked runs.
  const grave = result.reasons.filter((reason) => reason.severity !== 'note');
  return grave.length > 0 && grave.every((reason) => reason.code === 'from-onset') ? null : 'suspect';
}
