import { collectSamples } from './collect-samples.ts';
import {
  crossingOfCurve,
  type EstimatedCrossing,
  estimateCrossing,
  findCrossingCurve,
  straightCrossing,
} from './estimate-crossing.ts';
import { intervalBefore } from './interval-before.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

/** Data after the crossing that the final figure waits for, s. */
export const FINAL_AFTER_S = 10;
/** The target must be held at least this long (or three readings) for a crossing to stand. Common practice, no source. */
const SUSTAINED_S = 3;

/** A provisional figure needs this much data after the crossing from a quick reader, s. Judgement, no source. */
const GUARD_S = 0.5;
/** Without a curve the target must stand this long, s. Judgement, no source. */
const STANDS_S = 0.9;
/** Least time between two tries, s. */
const RETRY_S = 0.09;

/** Number of ones in the last three bits. */
const ABOVE_OF_THREE = [0, 1, 1, 2, 1, 2, 2, 3];

export type CrossingNews = 'provisional' | 'final' | 'withdrawn' | null;

/**
 * Looks for the first sustained upward crossing of one channel, reading by reading. Provisional: from the
 * readings up to now, reported within a second or three readings. Final: once, ten seconds later or at the
 * run's end. A spike, bounce or fault that falls back is withdrawn and the search goes on.
 */
export class CrossingWatch {
  readonly #trace: TraceBuffer;
  readonly #channel: number;
  readonly #targetC: number;
  /** How many of the last three readings were at or above target, one bit each. */
  #lastThree = 0;
  #belowSeen = false;
  #lastBelowS = Number.NEGATIVE_INFINITY;
  #lastBelowC = 0;
  #firstAboveS: number | null = null;
  #firstAboveC = 0;
  /** No try before this: the last one told when the crossing will be far enough back. */
  #tryFromS = Number.NEGATIVE_INFINITY;
  #sustainedChecked = false;
  provisional: EstimatedCrossing | null = null;
  final: EstimatedCrossing | null = null;
  latestValidS: number | null = null;

  constructor(trace: TraceBuffer, channel: number, targetC: number) {
    this.#trace = trace;
    this.#channel = channel;
    this.#targetC = targetC;
  }

  /** Takes a reading of the channel. `riseFromS`: where the rise began, as far as known. */
  add(
    timeS: number,
    temperatureC: number,
    riseFromS: number,
    resolutionC: number,
    closedUntilS = Number.POSITIVE_INFINITY,
  ): CrossingNews {
    if (this.final !== null) {
      this.seen(timeS, temperatureC);
      return null;
    }
    const valid = Number.isFinite(temperatureC);
    if (valid) {
      this.latestValidS = timeS;
      const above = temperatureC >= this.#targetC;
      this.#lastThree = ((this.#lastThree << 1) | (above ? 1 : 0)) & 7;
      if (!above) {
        this.#belowSeen = true;
        this.#lastBelowS = timeS;
        this.#lastBelowC = temperatureC;
        if (ABOVE_OF_THREE[this.#lastThree]! <= 1) this.#firstAboveS = null;
      } else if (this.#firstAboveS === null) {
        this.#firstAboveS = timeS;
        this.#firstAboveC = temperatureC;
      }
    }
    if (this.provisional !== null) return this.#confirm(timeS, riseFromS, resolutionC, closedUntilS);
    if (!valid || !this.#belowSeen || ABOVE_OF_THREE[this.#lastThree]! < 2) return null;
    if (timeS < this.#tryFromS) return null;
    const crossing = this.#tryProvisional(timeS, riseFromS, resolutionC);
    if (crossing === null) return null;
    this.provisional = crossing;
    this.#sustainedChecked = false;
    return 'provisional';
  }

  /** Takes a reading after the final figure: only that the channel still speaks. */
  seen(timeS: number, temperatureC: number): void {
    if (Number.isFinite(temperatureC)) this.latestValidS = timeS;
  }

  /** No more readings before `endS` (opened, or the end): settles what is still open. */
  settle(endS: number, riseFromS: number, resolutionC: number): CrossingNews {
    if (this.final !== null) return null;
    if (this.provisional === null) {
      if (!this.#belowSeen) return null;
      const late = this.#tryProvisional(endS, riseFromS, resolutionC);
      if (late === null) return null;
      this.provisional = late;
    }
    const end = Math.min(endS, this.provisional.timeS + FINAL_AFTER_S);
    if (!this.#sustained(end)) return this.#withdraw();
    this.final =
      estimateCrossing(this.#trace, this.#channel, this.#targetC, {
        guessS: this.provisional.timeS,
        riseFromS,
        untilS: end,
        resolutionC,
      }) ?? this.provisional;
    return 'final';
  }

  get everBelow(): boolean {
    return this.#belowSeen;
  }

  #confirm(timeS: number, riseFromS: number, resolutionC: number, closedUntilS: number): CrossingNews {
    const crossing = this.provisional!;
    if (!this.#sustainedChecked && timeS >= crossing.timeS + SUSTAINED_S) {
      const after = collectSamples(this.#trace, this.#channel, crossing.timeS, timeS);
      if (after.timesS.length >= 3) {
        this.#sustainedChecked = true;
        if (!this.#sustained(Math.min(timeS, closedUntilS))) return this.#withdraw();
      }
    }
    if (timeS < crossing.timeS + FINAL_AFTER_S) return null;
    return this.settle(Math.min(timeS, Math.max(closedUntilS, crossing.timeS)), riseFromS, resolutionC);
  }

  #sustained(untilS: number): boolean {
    const fromS = this.provisional!.timeS;
    const { valuesC } = collectSamples(this.#trace, this.#channel, fromS, untilS);
    if (valuesC.length === 0) return true;
    const needed = valuesC.length < 3 ? valuesC.length : valuesC.length * 0.5;
    return countFrom(valuesC, this.#targetC) >= needed;
  }

  #withdraw(): CrossingNews {
    this.provisional = null;
    this.#firstAboveS = null;
    this.#lastThree = 0;
    return 'withdrawn';
  }

  #tryProvisional(nowS: number, riseFromS: number, resolutionC: number): EstimatedCrossing | null {
    const intervalS = intervalBefore(this.#trace, nowS);
    const search = { guessS: this.#firstAboveS ?? nowS, riseFromS, untilS: nowS, resolutionC };
    const curve = findCrossingCurve(this.#trace, this.#channel, this.#targetC, search);
    const guardS = intervalS >= 0.4 ? 0 : GUARD_S;
    this.#tryFromS = nowS + RETRY_S;
    let straight = curve === null;
    if (curve !== null) {
      const crossingS = curve.fit.curve.tc;
      if (crossingS > nowS - guardS) {
        const readyS = Math.min(crossingS + guardS, (this.#firstAboveS ?? nowS) + STANDS_S, nowS + 1);
        this.#tryFromS = Math.max(this.#tryFromS, readyS);
      } else if (crossingS >= nowS - Math.max(3, 4 * intervalS)) {
        const crossing = crossingOfCurve(curve, this.#targetC);
        if (crossing !== null) return crossing;
        straight = true;
      }
    }
    // No curve through it (a step): the target stands for 0.9 s or three readings.
    if (this.#firstAboveS === null) return null;
    if (nowS - this.#firstAboveS < STANDS_S && intervalS < 0.4) return null;
    const standing = collectSamples(this.#trace, this.#channel, this.#firstAboveS, nowS);
    const above = countFrom(standing.valuesC, this.#targetC);
    if (above < 3 || above < 0.9 * standing.valuesC.length) return null;
    return (
      (straight ? straightCrossing(this.#trace, this.#channel, this.#targetC, search) : null) ?? this.#step()
    );
  }

  #step(): EstimatedCrossing {
    const aboveS = this.#firstAboveS!;
    const belowS = Number.isFinite(this.#lastBelowS) && this.#lastBelowS < aboveS ? this.#lastBelowS : aboveS;
    return {
      timeS: (aboveS + belowS) / 2,
      standardUncertaintyS: Math.max((aboveS - belowS) / Math.sqrt(12), 0.01),
      slopeCPerS: (this.#firstAboveC - this.#lastBelowC) / Math.max(aboveS - belowS, 1e-3),
      byCurve: false,
      noiseC: 0,
      readings: 2,
    };
  }
}

function countFrom(valuesC: Float64Array, targetC: number): number {
  let count = 0;
  for (let i = 0; i < valuesC.length; i++) if (valuesC[i]! >= targetC) count++;
  return count;
}
