import { headingMeaning } from '../wire/plain/heading-words.ts';
import type { ColumnProfile } from './column-profile.ts';
import type { LoggerHeadings } from './find-headings.ts';

/** Hours, minutes and seconds in columns of their own: the seconds alone are no time of a row. */
export function splitClock(names: readonly (string | null)[]): boolean {
  const has = (pattern: RegExp) => names.some((name) => name !== null && pattern.test(name.trim()));
  return has(/^(?:min|minutes?|mm)$/i) && has(/^(?:s|sec|seconds?|ss)$/i);
}

/** The column that most plainly holds the time of a row; undefined where none does. */
export function likeliestTimeColumn(
  { names, ticksUs }: LoggerHeadings,
  profiles: readonly ColumnProfile[],
): number | undefined {
  const meaning = names.map((name) => (name ? headingMeaning(name) : null));
  const named = (at: number) => meaning[at] === 'time';
  const first = (test: (profile: ColumnProfile, at: number) => boolean) => {
    const at = profiles.findIndex(test);
    return at < 0 ? undefined : at;
  };
  const numeric = (profile: ColumnProfile) => profile.kind === 'number' && profile.rises;
  const choices = [
    first(
      (profile, at) => numeric(profile) && named(at) && ticksUs[at] !== null && ticksUs[at] !== undefined,
    ),
    first((profile, at) => numeric(profile) && named(at) && profile.decimals > 0),
    first((profile) => profile.kind === 'date-and-clock'),
    first((profile) => profile.kind === 'clock'),
    first(
      (profile, at) =>
        profile.kind === 'number' && (named(at) || meaning[at] === 'date') && isDaySerial(profile),
    ),
    first((profile) => profile.kind === 'short-clock'),
    first((profile, at) => numeric(profile) && named(at)),
    // Named time, but standing still or running to and fro: kept, so that the reason can be told.
    first((profile, at) => profile.kind === 'number' && named(at)),
    // Without any heading, a first column with decimals that only rises.
    first(
      (profile, at) =>
        at === 0 &&
        names[0] === null &&
        numeric(profile) &&
        profile.decimals > 0 &&
        profiles.length > 1 &&
        steady(profile),
    ),
  ];
  return choices.find((choice) => choice !== undefined);
}

function steady(profile: ColumnProfile): boolean {
  const steps = profile.values.slice(1).map((value, at) => value - (profile.values[at] ?? value));
  const middle = steps.toSorted((a, b) => a - b)[steps.length >> 1] ?? 0;
  return steps.filter((step) => step > 0.5 * middle && step < 1.5 * middle).length >= 0.9 * steps.length;
}

/** Spreadsheets count days: 36526 is 2000-01-01. */
export function isDaySerial(profile: ColumnProfile): boolean {
  const first = profile.values[0] ?? 0;
  return first > 30_000 && first < 80_000 && profile.decimals >= 4 && profile.rises;
}
