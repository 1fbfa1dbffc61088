import { median, medianInPlace } from './median.ts';

export interface Level {
  readonly timeS: number;
  readonly levelC: number;
}

/** Most values of a block; beyond it every second one is dropped and only every second one taken. */
const MOST = 32;

/**
 * Thins a channel's readings to one level about every half second: the median of the block, so that a
 * spike inside it has no weight; with one or two readings a block, the median of the last three blocks.
 * Bounded memory, constant cost per reading.
 */
export class LevelBlocks {
  readonly blockS: number;
  #startS = Number.NaN;
  readonly #values = new Float64Array(MOST);
  #count = 0;
  #stride = 1;
  #seen = 0;
  #latest: number[] = [];
  #previousS = Number.NaN;

  constructor(blockS = 0.5) {
    this.blockS = blockS;
  }

  /** Takes a valid reading; returns the level of the block that it closes, if it does. */
  add(timeS: number, temperatureC: number): Level | null {
    let closed: Level | null = null;
    if (!(timeS - this.#startS < this.blockS)) {
      closed = this.#close();
      this.#startS = timeS;
      this.#count = 0;
      this.#stride = 1;
      this.#seen = 0;
    }
    if (this.#seen++ % this.#stride === 0) this.#values[this.#count++] = temperatureC;
    if (this.#count === MOST) this.#halve();
    return closed;
  }

  /** Drops a half-filled block that began before a time, and older levels with it. */
  forgetBefore(timeS: number): void {
    if (!(this.#startS < timeS)) return;
    this.#startS = Number.NaN;
    this.#count = 0;
    this.#latest = [];
  }

  #halve(): void {
    this.#count = MOST / 2;
    for (let index = 1; index < this.#count; index++) this.#values[index] = this.#values[2 * index]!;
    this.#stride *= 2;
  }

  #close(): Level | null {
    if (this.#count === 0) return null;
    if (this.#latest.length === 3) this.#latest.shift();
    this.#latest.push(medianInPlace(this.#values.subarray(0, this.#count)));
    const few = this.#count < 3 && this.#latest.length === 3;
    const levelC = few ? median(this.#latest)! : this.#latest[this.#latest.length - 1]!;
    // The median of three blocks belongs to the middle one.
    const timeS = few ? this.#previousS : this.#startS;
    this.#previousS = this.#startS;
    return { timeS, levelC };
  }
}
