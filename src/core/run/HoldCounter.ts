import type { HoldResult } from './RunResult.ts';

export type HoldNews = 'dip' | 'done' | 'above-again' | null;

/**
 * Counts the hold from the crossing on, while the press is closed, from the coldest bond-line channel.
 * A stay below target of up to `longestDipS` changes nothing; a longer one is a dip and restarts or pauses the count.
 * A gap or fault longer than the larger of 1 s, `longestDipS` and three sample intervals is never bridged:
 * its time is not counted and the hold is not verified.
 */
export class HoldCounter {
  readonly #targetC: number;
  readonly #wantedS: number;
  readonly #longestDipS: number;
  readonly #restarts: boolean;
  #lastS: number;
  #belowSinceS: number | null = null;
  #belowLowestC = Number.POSITIVE_INFINITY;
  #inDip = false;
  #countedS = 0;
  #unbrokenS = 0;
  #longestS = 0;
  #totalS = 0;
  #pendingS = 0;
  #verified = true;
  #done = false;
  #dipsBeforeDone = 0;
  #lowestC = Number.POSITIVE_INFINITY;
  #intervalS: number;
  #dips: { fromS: number; toS: number; lowestC: number }[] = [];

  constructor(
    crossingS: number,
    /** Usual time between readings, s. */
    intervalS: number,
    rules: {
      readonly targetC: number;
      readonly holdS: number;
      readonly longestDipS: number;
      readonly dip: 'restarts' | 'pauses';
    },
  ) {
    this.#lastS = crossingS;
    this.#intervalS = intervalS;
    this.#targetC = rules.targetC;
    this.#wantedS = rules.holdS;
    this.#longestDipS = Math.max(0, rules.longestDipS);
    this.#restarts = rules.dip === 'restarts';
  }

  get countedS(): number {
    return this.#countedS + this.#pendingS;
  }

  get inDip(): boolean {
    return this.#inDip;
  }

  /** Dips that began before the hold was done. */
  get dipsBeforeDone(): number {
    return this.#dipsBeforeDone;
  }

  /** False once a gap or fault lay inside the hold. */
  get seen(): boolean {
    return this.#verified;
  }

  get done(): boolean {
    return this.#done;
  }

  get lowestC(): number | null {
    return Number.isFinite(this.#lowestC) ? this.#lowestC : null;
  }

  /** Coldest valid bond-line temperature at a time after the crossing; call with valid readings only. */
  add(timeS: number, coldestC: number): HoldNews {
    const stepS = timeS - this.#lastS;
    if (!(stepS >= 0)) return null;
    const gap = stepS > Math.max(1, this.#longestDipS, 3 * this.#intervalS);
    if (!gap && stepS > 0)
      this.#intervalS = this.#intervalS === 0 ? stepS : 0.9 * this.#intervalS + 0.1 * stepS;
    this.#lastS = timeS;
    if (gap && !this.#done) this.#verified = false;
    const countS = gap ? 0 : stepS;
    this.#lowestC = Math.min(this.#lowestC, coldestC);
    return coldestC >= this.#targetC ? this.#above(timeS, countS) : this.#below(timeS, countS, coldestC);
  }

  result(): HoldResult {
    const dips = this.#inDip
      ? [...this.#dips, { fromS: this.#belowSinceS!, toS: this.#lastS, lowestC: this.#belowLowestC }]
      : this.#dips;
    return {
      wantedS: this.#wantedS,
      countedS: this.countedS,
      longestUnbrokenS: Math.max(this.#longestS, this.#unbrokenS),
      totalAboveS: this.#totalS,
      verified: this.#verified && this.#done,
      dips,
    };
  }

  #above(timeS: number, stepS: number): HoldNews {
    let news: HoldNews = null;
    if (this.#inDip) {
      this.#dips.push({ fromS: this.#belowSinceS!, toS: timeS, lowestC: this.#belowLowestC });
      this.#inDip = false;
      this.#unbrokenS = 0;
      news = 'above-again';
    } else {
      this.#countedS += this.#pendingS + stepS;
      this.#unbrokenS += this.#pendingS + stepS;
      this.#totalS += stepS;
    }
    this.#pendingS = 0;
    this.#belowSinceS = null;
    this.#belowLowestC = Number.POSITIVE_INFINITY;
    this.#longestS = Math.max(this.#longestS, this.#unbrokenS);
    if (this.#done || this.#countedS < this.#wantedS) return news;
    this.#done = true;
    return 'done';
  }

  #below(timeS: number, stepS: number, temperatureC: number): HoldNews {
    if (this.#belowSinceS === null) this.#belowSinceS = timeS - stepS;
    this.#belowLowestC = Math.min(this.#belowLowestC, temperatureC);
    if (this.#inDip) return null;
    this.#pendingS += stepS;
    if (timeS - this.#belowSinceS <= this.#longestDipS) return null;
    this.#inDip = true;
    this.#pendingS = 0;
    if (!this.#done) this.#dipsBeforeDone++;
    if (this.#restarts && !this.#done) this.#countedS = 0;
    return 'dip';
  }
}
