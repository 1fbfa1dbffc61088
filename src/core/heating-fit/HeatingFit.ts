/** What is left over after a fit, and whether it looks like noise. */
export interface ResidualTest {
  /** Stretches of equal sign too few (negative) or too many, in standard deviations (Wald and Wolfowitz). */
  readonly runsZ: number;
  readonly lag1Autocorrelation: number;
  /** Scatter from reading to reading, °C: differences of neighbours ÷ √2. */
  readonly noiseC: number;
  /** What stays after averaging the noise away, °C (root mean square): the curve's own misfit. */
  readonly misfitC: number;
  /** 'wrong-model': far too few stretches of equal sign, and a misfit that matters. */
  readonly verdict: 'fits' | 'wrong-model' | 'too-few-readings';
}

/**
 * A bond line's heating as a first-order curve after a delay: T(t) = Tp − (Tp − T0)·exp(−(t − d)/τ).
 * Temperatures °C, times s on the clock of the readings.
 */
export interface HeatingFit {
  readonly plateauC: number;
  readonly timeConstantS: number;
  /** When the curve leaves the start temperature (press closed + delay). */
  readonly departsS: number;
  readonly startC: number;
  /** Of plateau, time constant and departure, in this order; widened where the residuals hang together. */
  readonly covariance: readonly (readonly [number, number, number])[];
  readonly residualSdC: number;
  readonly residuals: ResidualTest;
  readonly readings: number;
  /** Readings left out as spikes. */
  readonly spikes: number;
}
