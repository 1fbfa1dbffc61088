import type { ChartSignal } from './IndividualsChart.ts';

/** `needed` of the last `of` points beyond `beyondSigma` on one side of the centre. */
const ZONE_RULES: readonly { signal: ChartSignal; needed: number; of: number; beyondSigma: number }[] = [
  { signal: 'beyond-limit', needed: 1, of: 1, beyondSigma: 3 },
  { signal: 'two-of-three', needed: 2, of: 3, beyondSigma: 2 },
  { signal: 'four-of-five', needed: 4, of: 5, beyondSigma: 1 },
  { signal: 'shift', needed: 8, of: 8, beyondSigma: 0 },
];
const DRIFT_POINTS = 6;

/**
 * Signals for each value of a chart, at the value that completes them: the four zone rules and six
 * in a row rising or falling. Source: NIST/SEMATECH e-Handbook, section 6.3.2. A point on a line is not beyond it.
 */
export function chartSignals(
  values: readonly number[],
  { centre, sigma }: { readonly centre: number; readonly sigma: number },
): readonly (readonly ChartSignal[])[] {
  return values.map((value, index) => {
    const zones = ZONE_RULES.filter(({ needed, of, beyondSigma }) => {
      const last = values.slice(Math.max(0, index - of + 1), index + 1);
      return [1, -1].some((side) => {
        const beyond = (one: number) => side * (one - centre) > beyondSigma * sigma;
        return beyond(value) && last.filter(beyond).length >= needed;
      });
    });
    const signals = zones.map(({ signal }) => signal);
    return drifts(values.slice(0, index + 1)) ? [...signals, 'drift'] : signals;
  });
}

function drifts(values: readonly number[]): boolean {
  const last = values.slice(-DRIFT_POINTS);
  if (last.length < DRIFT_POINTS) return false;
  const steps = last.slice(1).map((value, index) => value - (last[index] ?? value));
  return steps.every((step) => step > 0) || steps.every((step) => step < 0);
}
