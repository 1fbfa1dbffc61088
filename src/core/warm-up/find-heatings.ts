import { median } from '../run/median.ts';
import type { ChannelRecord, PlatenRecord } from './gather-platens.ts';

/** One warm-up inside a recording. */
export interface Heating {
  /** 1, 2, … */
  readonly number: number;
  readonly of: number;
  /** The recording's stretch: from cold to where the platens begin to cool, or to its end. Times as in the recording. */
  readonly record: PlatenRecord;
  /** When the platens began to cool, s; null where the recording ends heated. */
  readonly coolsFromS: number | null;
  /** False where the platens never rise by more than 50 °C: the whole recording, but no warm-up from cold. */
  readonly rises: boolean;
}

/** Platens that rise by more are being heated, and by more down are off; no cold part does that, °C. Judgement, no source. */
const LEG_C = 50;
/** Medians of so long are looked at, s, and more where readings lie further apart. */
const BLOCK_S = 10;
/** Kept before a noted power-on, s: its mean is the start temperature. */
const BEFORE_S = 30;
const LEVEL_C = 1;

/**
 * Every heating of a recording, in order: platens that rise by more than 50 °C after a low, up to where they begin to fall by more
 * than 50 °C (heaters off) or to the end. Looked for in the middle of all platens. A recording that never rises so far is one heating.
 */
export function findHeatings(record: PlatenRecord): readonly Heating[] {
  const course = middleCourse(record.channels);
  const legs = risingLegs(course.valuesC);
  const whole: Heating = { number: 1, of: 1, record, coolsFromS: null, rises: false };
  if (legs.length === 0) return [whole];
  return legs.map((leg, i): Heating => {
    const before = legs[i - 1];
    const afterS = before === undefined ? Number.NEGATIVE_INFINITY : course.timesS[before.high]!;
    const risenS = course.timesS[leg.risen]!;
    const powerS = record.heatersOnS.findLast((timeS) => timeS > afterS && timeS <= risenS) ?? null;
    const lowS = leg.fallsBefore ? course.timesS[leg.low]! - BLOCK_S / 2 : Number.NEGATIVE_INFINITY;
    const fromS = powerS === null ? lowS : Math.min(lowS, powerS - BEFORE_S);
    const coolsFromS =
      leg.falls === null ? null : course.timesS[fallBegins(course.valuesC, leg.high, leg.falls)]!;
    return {
      number: i + 1,
      of: legs.length,
      record: stretch(record, fromS, coolsFromS ?? Number.POSITIVE_INFINITY, powerS),
      coolsFromS,
      rises: true,
    };
  });
}

interface Course {
  readonly timesS: readonly number[];
  readonly valuesC: readonly number[];
}

/** Block medians of each channel, averaged over the channels; a channel without a reading keeps its last. */
function middleCourse(channels: readonly ChannelRecord[]): Course {
  const blocks = channels.map(({ timesS, valuesC }) => {
    const all = new Map<number, number[]>();
    timesS.forEach((timeS, i) => {
      const block = Math.floor(timeS / BLOCK_S);
      const seen = all.get(block);
      if (seen === undefined) all.set(block, [valuesC[i]!]);
      else seen.push(valuesC[i]!);
    });
    return all;
  });
  const numbers = [...new Set(blocks.flatMap((all) => [...all.keys()]))].sort((a, b) => a - b);
  const last: (number | null)[] = channels.map(() => null);
  const timesS: number[] = [];
  const valuesC: number[] = [];
  for (const number of numbers) {
    blocks.forEach((all, i) => {
      const values = all.get(number);
      if (values !== undefined) last[i] = median(values);
    });
    if (last.includes(null)) continue;
    timesS.push((number + 0.5) * BLOCK_S);
    valuesC.push(last.reduce<number>((sum, value) => sum + value!, 0) / last.length);
  }
  return { timesS, valuesC };
}

interface RisingLeg {
  readonly low: number;
  readonly high: number;
  /** First more than 50 °C above the low. */
  readonly risen: number;
  /** First more than 50 °C below the high, after it; null where that never comes. */
  readonly falls: number | null;
  /** The platens cooled by as much before the low. */
  readonly fallsBefore: boolean;
}

/** Highs and lows with more than 50 °C between each and the next. */
function risingLegs(values: readonly number[]): readonly RisingLeg[] {
  const legs: RisingLeg[] = [];
  let low = 0;
  let high = 0;
  let risen: number | null = null;
  let fallsBefore = false;
  for (let i = 1; i < values.length; i++) {
    const value = values[i]!;
    if (risen === null) {
      if (value > values[high]!) high = i;
      // A fall from the first readings on, before anything rose.
      if (values[high]! - value > LEG_C && !fallsBefore) {
        fallsBefore = true;
        low = i;
      }
      if (value < values[low]!) low = i;
      if (value - values[low]! > LEG_C) {
        risen = i;
        high = i;
      }
    } else {
      if (value > values[high]!) high = i;
      if (values[high]! - value > LEG_C) {
        legs.push({ low, high, risen, falls: i, fallsBefore });
        risen = null;
        fallsBefore = true;
        low = i;
        high = i;
      }
    }
  }
  if (risen !== null) legs.push({ low, high, risen, falls: null, fallsBefore });
  return legs;
}

/** Where the fall that is seen at `falls` begins: back up it to its top, then the last block that is still at that level. */
function fallBegins(values: readonly number[], high: number, falls: number): number {
  let top = falls;
  while (top > high && values[top - 1]! >= values[top]!) top--;
  let last = top;
  for (let i = top; i < falls; i++) if (values[i]! >= values[top]! - LEVEL_C) last = i;
  return last;
}

function stretch(record: PlatenRecord, fromS: number, toS: number, powerS: number | null): PlatenRecord {
  const inside = (timeS: number) => timeS >= fromS && timeS <= toS;
  return {
    ...record,
    channels: record.channels.map((channel) => ({
      ...channel,
      timesS: channel.timesS.filter(inside),
      valuesC: channel.valuesC.filter((_, i) => inside(channel.timesS[i]!)),
    })),
    closings: record.closings.filter(({ timeS }) => inside(timeS)),
    heatersOnS: powerS === null ? [] : [powerS],
    gaps: record.gaps.filter((gap) => gap.toS >= fromS && gap.fromS <= toS),
    endedS: Math.min(record.endedS, toS),
  };
}
