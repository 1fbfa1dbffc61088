/** Finds the step in which a channel's values come: the smallest difference seen between two neighbours, °C. */
export class ResolutionWatch {
  readonly #statedC: number | null;
  #previousC = Number.NaN;
  #smallestC = Number.POSITIVE_INFINITY;

  constructor(statedC: number | null) {
    this.#statedC = statedC;
  }

  add(temperatureC: number): void {
    const difference = Math.abs(temperatureC - this.#previousC);
    if (difference > 1e-6 && difference < this.#smallestC) this.#smallestC = difference;
    this.#previousC = temperatureC;
  }

  /** 0 while nothing is known. */
  get resolutionC(): number {
    if (this.#statedC !== null) return this.#statedC;
    return this.#smallestC < 5 ? this.#smallestC : 0;
  }
}
