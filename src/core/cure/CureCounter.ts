import type { CureFacts, CureResult } from './CureFacts.ts';
import { cureRate } from './cure-rate.ts';

/** A longer stretch without a reading is never bridged, s; at least three sample intervals are. */
const LONGEST_STEP_S = 1;

/**
 * Equivalent time at a reference temperature, te = ∫ exp(−Ea/R·(1/T − 1/Tref)) dt, reading by reading: between two
 * readings the temperature is a straight line and the rate is integrated by Simpson's rule. Constant work per reading.
 * It stands beside a dwell and never shortens one.
 */
export class CureCounter {
  readonly #facts: CureFacts;
  readonly #intervalS: number;
  #beforeS: number | null = null;
  #beforeC = 0;
  #beforeRate = 0;
  #equivalentS = 0;
  #belowRangeS = 0;
  #aboveRangeS = 0;
  #missingS = 0;

  /** `intervalS`: usual time between readings. */
  constructor(facts: CureFacts, intervalS: number) {
    this.#facts = facts;
    this.#intervalS = intervalS;
  }

  get equivalentS(): number {
    return this.#equivalentS;
  }

  /** Next valid reading of the coldest bond-line channel while the press is closed. */
  add(timeS: number, temperatureC: number): void {
    const { rangeC } = this.#facts;
    const rate = cureRate(this.#facts, temperatureC);
    if (this.#beforeS !== null) {
      const stepS = timeS - this.#beforeS;
      if (!(stepS >= 0)) return;
      if (stepS > Math.max(LONGEST_STEP_S, 3 * this.#intervalS)) this.#missingS += stepS;
      else {
        const middleC = (temperatureC + this.#beforeC) / 2;
        const middle = cureRate(this.#facts, middleC);
        this.#equivalentS += (stepS * (this.#beforeRate + 4 * middle + rate)) / 6;
        if (middleC < rangeC.from) this.#belowRangeS += stepS;
        else if (middleC > rangeC.to) this.#aboveRangeS += stepS;
      }
    }
    this.#beforeS = timeS;
    this.#beforeC = temperatureC;
    this.#beforeRate = rate;
  }

  result(): CureResult {
    return {
      ...this.#facts,
      equivalentS: this.#equivalentS,
      belowRangeS: this.#belowRangeS,
      aboveRangeS: this.#aboveRangeS,
      missingS: this.#missingS,
    };
  }
}
