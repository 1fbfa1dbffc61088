import { StatisticsError } from './StatisticsError.ts';
import { smallestCount } from './smallest-count.ts';
import { studentTQuantile } from './student-t-quantile.ts';

/** Beyond this many values the answer is "too many to say". */
const MOST_VALUES = 1000;

/**
 * About how many more values bring the half-width of the mean's interval, t(n' − 1)·s/√n', inside
 * `wantedHalfWidth`, with t of the new number n' and the spread as it is now. 0 when it is inside already;
 * null when more than a thousand values in all would be needed. "About", for the spread itself is a guess.
 */
export function moreValuesForWidth(input: {
  readonly values: number;
  readonly sd: number;
  readonly wantedHalfWidth: number;
  readonly confidence?: number;
}): number | null {
  const { values, sd, wantedHalfWidth, confidence = 0.95 } = input;
  if (!(values >= 2 && Number.isFinite(sd) && sd >= 0 && wantedHalfWidth > 0)) {
    throw new StatisticsError(
      'option-out-of-range',
      `runs still needed requires two values, a spread and a wanted width above 0, came ${values}, ${sd}, ${wantedHalfWidth}`,
      'Give a wanted half-width above 0',
    );
  }
  if (values > MOST_VALUES) return null;
  const enough = smallestCount(values, MOST_VALUES, (n) => {
    return (studentTQuantile((1 + confidence) / 2, n - 1) * sd) / Math.sqrt(n) <= wantedHalfWidth;
  });
  return enough === null ? null : enough - values;
}
