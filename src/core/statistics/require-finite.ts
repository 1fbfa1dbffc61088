import { StatisticsError } from './StatisticsError.ts';

/** Door of every statistic: at least `least` values, each a finite number. Throws otherwise; NaN goes no further. */
export function requireFinite(values: readonly number[], least: number, what: string): void {
  if (values.length < least) {
    throw new StatisticsError(
      'too-few-values',
      `${what} requires at least ${least} values, came ${values.length}`,
      'Make more runs',
    );
  }
  for (const value of values) {
    if (!Number.isFinite(value)) {
      throw new StatisticsError(
        'value-not-finite',
        `${what} requires finite numbers, came ${value}`,
        'Leave out runs without a soak time before averaging',
      );
    }
  }
}
