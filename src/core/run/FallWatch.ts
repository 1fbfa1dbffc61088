import { type Level, LevelBlocks } from './LevelBlocks.ts';

/** A drop counts when it happens within this time, s (three levels for slow readers). */
const WITHIN_S = 30;
/** Nothing opens that has not risen by this before, °C: a channel that falls from the start has another trouble. */
const LEAST_RISE_C = 10;

/**
 * Watches the bond line for a steep, sustained fall: at least a tenth of the rise from start to peak, and 5 °C, lost
 * within 30 s, over three falling levels. A platen that swings about its set point does not do that. Limits are
 * common practice, no source. `startedS` is the last level before the fall; a return to that level takes the hint back.
 */
export class FallWatch {
  readonly #blocks = new LevelBlocks();
  #levels: Level[] = [];
  #lowestC = Number.POSITIVE_INFINITY;
  #peakC = Number.NEGATIVE_INFINITY;
  #riseC = 0;
  startedS: number | null = null;
  #startedC = 0;
  #hintedS = 0;

  /** Takes a reading; true when a fall has just become certain. */
  add(timeS: number, temperatureC: number): boolean {
    const level = this.#blocks.add(timeS, temperatureC);
    if (level === null) return false;
    this.#lowestC = Math.min(this.#lowestC, level.levelC);
    if (level.levelC > this.#peakC) {
      this.#peakC = level.levelC;
      this.#riseC = level.levelC - this.#lowestC;
    }
    this.#levels.push(level);
    while (this.#levels.length > 4 && this.#levels[0]!.timeS < level.timeS - WITHIN_S) this.#levels.shift();
    if (this.startedS !== null) {
      if (level.levelC >= this.#startedC - 1) this.startedS = null;
      return false;
    }
    return this.#look(level);
  }

  /** True when the level lost more than half of the rise and has not come back for ten seconds. */
  get over(): boolean {
    const last = this.#levels[this.#levels.length - 1];
    if (this.startedS === null || last === undefined || last.timeS < this.#hintedS + 10) return false;
    const earlier = this.#levels.find((level) => level.timeS >= last.timeS - 10) ?? last;
    return (
      last.levelC < this.#lowestC + 0.5 * (this.#startedC - this.#lowestC) && last.levelC <= earlier.levelC
    );
  }

  /** Share of the way from the lowest level to `targetC` that the peak reached. */
  shareOfWay(targetC: number): number {
    return (this.#peakC - this.#lowestC) / Math.max(1e-9, targetC - this.#lowestC);
  }

  #look(now: Level): boolean {
    const count = this.#levels.length;
    if (count < 4 || this.#riseC < LEAST_RISE_C) return false;
    const a = this.#levels[count - 3]!;
    const b = this.#levels[count - 2]!;
    if (!(now.levelC < b.levelC && b.levelC < a.levelC)) return false;
    let highest = 0;
    for (let i = 1; i < count; i++) if (this.#levels[i]!.levelC > this.#levels[highest]!.levelC) highest = i;
    const top = this.#levels[highest]!;
    if (highest > count - 4) return false;
    const dropC = top.levelC - now.levelC;
    if (dropC < Math.max(5, 0.1 * this.#riseC)) return false;
    const steepest = (a.levelC - now.levelC) / (now.timeS - a.timeS);
    let from = count - 2;
    while (from > highest) {
      const earlier = this.#levels[from - 1]!;
      const later = this.#levels[from]!;
      if ((earlier.levelC - later.levelC) / (later.timeS - earlier.timeS) < 0.15 * steepest) break;
      from--;
    }
    this.startedS = this.#levels[from]!.timeS;
    this.#startedC = this.#levels[from]!.levelC;
    this.#hintedS = now.timeS;
    return true;
  }
}
