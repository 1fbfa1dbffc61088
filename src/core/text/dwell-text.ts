import { studentTCdf } from '../statistics/student-t-cdf.ts';
import { type DwellInput, dwell, type NoDwellReason } from '../trial/dwell.ts';
import type { Dwell, DwellRule, TrialStatistics } from '../trial/TrialResult.ts';
import { TOLERANCE_WISH } from '../trial/tolerance-upper.ts';
import { secondsText } from './units-text.ts';

export const DWELL_RULE_NAME: Readonly<Record<DwellRule, string>> = {
  mean: 'common mean rule',
  slowest: 'slowest run',
  'next-run': 'full hold in the next run (95 %)',
  tolerance: 'full hold in most cycles',
};

/** Rounding up by less than this is not counted on: the dwell is spoken of as the rule gives it. */
const FINE_STEP_S = 1;

export const NO_DWELL: Readonly<Record<NoDwellReason, string>> = {
  'no-counting-run': 'no run counts yet',
  'two-runs-needed': 'not known from one run; make a second one',
};

/**
 * The two lines of equal weight that stand under every trial: what the common mean rule gives and what it is
 * worth, and what a full hold in the next run takes.
 */
export function dwellSentences(input: Omit<DwellInput, 'rule'>): readonly [string, string] {
  return [dwellLine(input, 'mean'), dwellLine(input, 'next-run')];
}

/** One line for one rule: "common mean rule: 174 s; about half of all cycles hold for less than 120 s". */
export function dwellLine(input: Omit<DwellInput, 'rule'>, rule: DwellRule): string {
  const name = rule === 'tolerance' ? toleranceName(input.tolerance) : DWELL_RULE_NAME[rule];
  const outcome = dwell({ ...input, rule });
  if (outcome.dwell === null) return `${name}: ${NO_DWELL[outcome.reason]}`;
  const total = `${name}: ${secondsText(outcome.dwell.totalS, 3)}`;
  return [total, ...dwellWorth(outcome.dwell, input.statistics)].join('; ');
}

/** What must be set on the press's own timer, where it differs from the dwell. Null where it does not. */
export function timerSentence(
  result: Dwell,
  timer: { startsAt: 'button' | 'closing'; offsetS: number },
): string | null {
  if (timer.offsetS === 0) return null;
  const start = timer.startsAt === 'button' ? 'the button' : 'its closing switch';
  const when =
    timer.offsetS > 0
      ? `${secondsText(timer.offsetS, 3)} before press closed`
      : `${secondsText(-timer.offsetS, 3)} after press closed`;
  return `dwell from press closed: ${secondsText(result.totalS, 3)}; set on the press timer: ${secondsText(result.timerSetS, 3)} (it starts at ${start}, ${when})`;
}

function dwellWorth(result: Dwell, statistics: TrialStatistics): readonly string[] {
  const bound = result.rule === 'next-run' || result.rule === 'tolerance';
  const worth = bound ? [] : shortHolds(result, statistics);
  return [
    ...worth,
    ...(result.provisional ? ['provisional, one run only: nothing is known of the spread'] : []),
    ...(bound && statistics.partSpreadMissing
      ? ['spread from part to part, as far as stated, is not in it']
      : []),
    ...(statistics.fromOnset ? ['soak times are from the onset of the rise, so this is short'] : []),
  ];
}

function shortHolds(result: Dwell, statistics: TrialStatistics): readonly string[] {
  const hold = secondsText(result.holdS);
  if (result.rule === 'mean' && result.marginS === 0 && roundingS(result) <= FINE_STEP_S) {
    return [`about half of all cycles hold for less than ${hold}`];
  }
  const share = shareOfShortHolds(result, statistics);
  return share === null ? [] : [`about ${shareText(share)} of all cycles hold for less than ${hold}`];
}

/** Share of cycles whose soak leaves less than the hold, by the spread of the trial; null without a spread. */
function shareOfShortHolds(result: Dwell, { runs, meanSoakS, sdSoakS }: TrialStatistics): number | null {
  if (meanSoakS === null || sdSoakS === null || sdSoakS === 0) return null;
  const rounding = roundingS(result) > FINE_STEP_S ? roundingS(result) : 0;
  const roomS = result.soakS + result.marginS + rounding - meanSoakS;
  return 1 - studentTCdf(roomS / (sdSoakS * Math.sqrt(1 + 1 / runs)), runs - 1);
}

/** What rounding up to the timer's step added, s. */
function roundingS({ totalS, soakS, holdS, marginS }: Dwell): number {
  return totalS - (soakS + holdS + marginS);
}

/** Shares are rough, so they are said in steps: "1 in 20". */
function shareText(share: number): string {
  if (share > 0.45) return 'half';
  return share < 0.001 ? 'fewer than 1 in 1000' : `1 in ${Math.round(1 / share)}`;
}

function toleranceName({ content, confidence } = TOLERANCE_WISH): string {
  return `full hold in ${percent(content)} of all cycles (${percent(confidence)} sure)`;
}

function percent(fraction: number): string {
  return `${Number((fraction * 100).toFixed(2))} %`;
}
