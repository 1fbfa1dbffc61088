import { StatisticsError } from './StatisticsError.ts';

/** Throws unless the probability lies strictly between 0 and 1. */
export function requireProbability(probability: number, what: string): void {
  if (probability > 0 && probability < 1) return;
  throw new StatisticsError(
    'probability-out-of-range',
    `${what} requires a probability between 0 and 1, came ${probability}`,
    'Give a fraction such as 0.95, not a percentage',
  );
}
