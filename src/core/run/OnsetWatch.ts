import { type Level, LevelBlocks } from './LevelBlocks.ts';
import { median } from './median.ts';

/** How far back the lowest level is looked for, s. Common practice, no source. */
const LOOK_BACK_S = 120;

/** No carrier starts colder, °C: such a value is a reversed plug on its way back. Common practice, no source. */
const COLDEST_START_C = -30;

export interface RiseSeen {
  /** Time of the lowest level before the rise. */
  readonly lowestS: number;
  readonly lowestC: number;
  /** Time of the level that made the rise certain. */
  readonly seenS: number;
  readonly seenC: number;
}

/**
 * Watches one channel for the start of a rise, causally. A rise is certain when the median of three
 * levels stands above the lowest level of the last two minutes by the largest of
 * 15 % of the way to the target (at most 8 °C, at least 2 °C), six standard deviations of a level and four steps
 * of the reader. The standard deviation is never taken below q/√12, so steps of a flat baseline cannot pass.
 */
export class OnsetWatch {
  readonly #targetC: number;
  readonly #blocks = new LevelBlocks();
  #levels: Level[] = [];
  #lowest: Level | null = null;

  constructor(targetC: number) {
    this.#targetC = targetC;
  }

  /** Levels of the last two minutes, oldest first. */
  get levels(): readonly Level[] {
    return this.#levels;
  }

  add(timeS: number, temperatureC: number, resolutionC: number): RiseSeen | null {
    const level = this.#blocks.add(timeS, temperatureC);
    if (level === null) return null;
    this.#levels.push(level);
    if (this.#levels[0]!.timeS < level.timeS - 2 * LOOK_BACK_S)
      this.#levels = this.#levels.filter((old) => old.timeS >= level.timeS - LOOK_BACK_S);
    if (this.#lowest === null || level.levelC <= this.#lowest.levelC) this.#lowest = level;
    else if (this.#lowest.timeS < level.timeS - LOOK_BACK_S) this.#lowest = this.#findLowest(level.timeS);
    return this.#rise(level, resolutionC);
  }

  /** Forgets what was before a time: the rise is looked for from there on. */
  forgetBefore(timeS: number): void {
    this.#blocks.forgetBefore(timeS);
    this.#levels = this.#levels.filter((level) => level.timeS >= timeS);
    this.#lowest = this.#findLowest(Number.POSITIVE_INFINITY);
  }

  #findLowest(nowS: number): Level | null {
    let lowest: Level | null = null;
    for (const level of this.#levels)
      if (
        (nowS === Number.POSITIVE_INFINITY || level.timeS >= nowS - LOOK_BACK_S) &&
        (lowest === null || level.levelC <= lowest.levelC)
      )
        lowest = level;
    return lowest;
  }

  #rise(now: Level, resolutionC: number): RiseSeen | null {
    const lowest = this.#lowest!;
    const wayC = this.#targetC - lowest.levelC;
    if (wayC <= 0 || this.#levels.length < 3 || lowest.levelC < COLDEST_START_C) return null;
    const leastC = Math.max(Math.min(8, Math.max(2, 0.15 * wayC)), 4 * resolutionC);
    if (now.levelC - lowest.levelC < leastC) return null;
    const lastThree = this.#levels.slice(-3).map((level) => level.levelC);
    if (median(lastThree)! - lowest.levelC < leastC) return null;
    const before = this.#levels.filter((level) => level.timeS <= lowest.timeS).slice(-60);
    const steps = before.slice(1).map((level, index) => Math.abs(level.levelC - before[index]!.levelC));
    const noiseC = Math.max(((median(steps) ?? 0) * 1.4826) / Math.SQRT2, resolutionC / Math.sqrt(12));
    if (now.levelC - lowest.levelC < 6 * noiseC) return null;
    return { lowestS: lowest.timeS, lowestC: lowest.levelC, seenS: now.timeS, seenC: now.levelC };
  }
}
