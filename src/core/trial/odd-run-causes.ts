import { soakSensitivities } from '../heating-fit/fitted-soak-s.ts';
import type { RunResult } from '../run/RunResult.ts';
import type { TrialRun } from './TrialResult.ts';

export type OddRunCause =
  | {
      readonly kind: 'start' | 'upper-platen' | 'lower-platen';
      readonly differenceC: number;
      readonly explainsS: number;
    }
  | { readonly kind: 'slope'; readonly differenceCPerS: number }
  /** From the fitted heating curve. */
  | { readonly kind: 'plateau'; readonly differenceC: number }
  | { readonly kind: 'time-constant'; readonly differenceS: number }
  | { readonly kind: 'press-closed-by'; readonly by: string }
  | { readonly kind: 'onset-delay'; readonly differenceS: number };

/**
 * Smallest differences worth naming, and what a degree does to the soak time. The two sensitivities hold for
 * a bond line that heats from 24 to 176.7 °C between platens of 232 °C in about 53.5 s; they are the order of
 * size elsewhere too. The limits are common practice, no source.
 */
const LEAST_START_C = 2;
const LEAST_PLATEN_C = 2;
const LEAST_SLOPE_SHARE = 0.1;
const LEAST_ONSET_S = 1;
const LEAST_PLATEAU_C = 3;
const LEAST_TIME_CONSTANT_SHARE = 0.05;
const SOAK_S_PER_START_C = -0.2;
/** For both platens together; one platen does half. */
const SOAK_S_PER_PLATEN_C = -0.5;

/** What was different about one run beside its soak time: start, platens, slope, plateau, time constant, mark, delay. */
export function oddRunCauses(run: TrialRun, others: readonly TrialRun[]): readonly OddRunCause[] {
  const beyond = (of: (result: RunResult) => number | null, least: number): number | null => {
    const difference = differenceFromOthers(run, others, of);
    return difference === null || Math.abs(difference) < least ? null : difference;
  };
  const causes: OddRunCause[] = [];
  const { perStartC, perPlatenC } = sensitivities(others);
  const startC = beyond((result) => result.startC, LEAST_START_C);
  if (startC !== null) causes.push({ kind: 'start', differenceC: startC, explainsS: startC * perStartC });
  for (const platen of ['upper', 'lower'] as const) {
    const differenceC = beyond((result) => result.platenAtClosingC[platen], LEAST_PLATEN_C);
    if (differenceC === null) continue;
    causes.push({
      kind: `${platen}-platen`,
      differenceC,
      explainsS: (differenceC * perPlatenC) / 2,
    });
  }
  const slope = (result: RunResult) => result.crossing?.slopeCPerS ?? null;
  const differenceCPerS = beyond(slope, LEAST_SLOPE_SHARE * (slope(run.result) ?? 0));
  if (differenceCPerS !== null) causes.push({ kind: 'slope', differenceCPerS });
  const plateauC = beyond((result) => result.fit?.plateauC ?? null, LEAST_PLATEAU_C);
  if (plateauC !== null) causes.push({ kind: 'plateau', differenceC: plateauC });
  const timeConstantS = (result: RunResult) => result.fit?.timeConstantS ?? null;
  const slowerS = beyond(timeConstantS, LEAST_TIME_CONSTANT_SHARE * (timeConstantS(run.result) ?? 0));
  if (slowerS !== null) causes.push({ kind: 'time-constant', differenceS: slowerS });
  const delayS = beyond(onsetDelayS, LEAST_ONSET_S) ?? beyond(fittedDelayS, LEAST_ONSET_S);
  if (delayS !== null) causes.push({ kind: 'onset-delay', differenceS: delayS });
  const by = run.result.pressClosed?.by;
  if (by !== undefined && others.every((other) => other.result.pressClosed?.by !== by)) {
    causes.push({ kind: 'press-closed-by', by });
  }
  return causes;
}

/** Press closed to the departure of the fitted curve, s. */
function fittedDelayS({ fit }: RunResult): number | null {
  return fit?.delayS ?? null;
}

/** Press closed to onset of the rise, s; null where either is missing. */
function onsetDelayS({ onset, pressClosed }: RunResult): number | null {
  return onset === null || pressClosed === null ? null : onset.timeS - pressClosed.timeS;
}

function differenceFromOthers(
  run: TrialRun,
  others: readonly TrialRun[],
  of: (result: RunResult) => number | null,
): number | null {
  const own = of(run.result);
  const theirs = others.flatMap((other) => of(other.result) ?? []);
  if (own === null || theirs.length === 0) return null;
  return own - theirs.reduce((sum, value) => sum + value, 0) / theirs.length;
}

/**
 * What a degree does to the soak time, s/°C, by the other runs' fitted curves at the temperature where they crossed
 * (plateau − slope · time constant); the trade's example where no curve fits.
 */
function sensitivities(others: readonly TrialRun[]): {
  readonly perStartC: number;
  readonly perPlatenC: number;
} {
  const known = others.flatMap(({ result: { fit, crossing } }) =>
    fit == null || crossing === null || !(crossing.slopeCPerS > 0)
      ? []
      : soakSensitivities(fit, fit.plateauC - crossing.slopeCPerS * fit.timeConstantS),
  );
  const mean = (of: (one: (typeof known)[number]) => number, usual: number): number =>
    known.length === 0 ? usual : known.reduce((sum, one) => sum + of(one), 0) / known.length;
  return {
    perStartC: mean((one) => one.perStartC, SOAK_S_PER_START_C),
    perPlatenC: mean((one) => one.perPlatenC, SOAK_S_PER_PLATEN_C),
  };
}
