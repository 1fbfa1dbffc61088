/** A first-order lag, exact for an input that changes evenly over each step. */
export interface Lag {
  /** Takes the input at the end of the step; returns the lagging value then. */
  step(stepS: number, inputC: number): number;
  readonly valueC: number;
  /** Puts the lag at rest at a value. */
  rest(valueC: number): void;
}

/**
 * A probe's own temperature: dT/dt = (input − T) / τ, with τ in s (0: no lag). For an input that rises as a ramp
 * the answer trails by τ · slope once the start has died away.
 */
export function createLag(timeConstantS: number, startC: number): Lag {
  let valueC = startC;
  let latestInputC = startC;
  return {
    step(stepS, inputC) {
      if (timeConstantS <= 0) {
        valueC = inputC;
      } else {
        const decay = Math.exp(-stepS / timeConstantS);
        const slopeCPerS = (inputC - latestInputC) / stepS;
        const trailC = slopeCPerS * timeConstantS;
        valueC = inputC - trailC + (valueC - latestInputC + trailC) * decay;
      }
      latestInputC = inputC;
      return valueC;
    },
    get valueC() {
      return valueC;
    },
    rest(restC) {
      valueC = restC;
      latestInputC = restC;
    },
  };
}
