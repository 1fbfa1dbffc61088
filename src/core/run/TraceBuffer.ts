import { CHANNEL_FAULTS, type ReadingColumns } from '../reading/ReadingColumns.ts';
import type { Reading } from '../reading/StreamEvent.ts';
import type { ChannelFault } from '../wire/WireEvent.ts';

const OVER_RANGE = 1 + CHANNEL_FAULTS.indexOf('over-range');

/** Readings that fit before room is made: three minutes at 10 Hz. */
const FIRST_ROOM = 2048;

/** No bonding press reaches this: such a value is an input at full scale, not a temperature. Common practice, no source. */
const HIGHEST_C = 700;
const LOWEST_C = -273.15;

/** Room for the readings of analyses made one after the other, so that not each asks for its own. */
export interface TraceRoom {
  latest: TraceBuffer | null;
}

/**
 * Readings of the present run, or while none is open of the last while, in typed arrays.
 * A value that is missing or a fault is held as NaN and never leaves through `valueAt` into statistics:
 * callers ask `Number.isFinite` (or use `valid`, which leaves such values out).
 * Index 0 is the oldest reading kept. Appending costs constant time on average.
 */
export class TraceBuffer {
  readonly channels: number;
  #times: Float64Array;
  #values: Float64Array[];
  #faults: Uint8Array[];
  /** Values without a temperature since the beginning, by channel. */
  readonly #without: number[];
  #from = 0;
  #to = 0;

  /** `room`: holds the buffer of an analysis that is over, whose arrays are taken over where it has as many channels. */
  constructor(channels: number, room: TraceRoom | null = null) {
    this.channels = channels;
    const spare = room?.latest ?? null;
    if (room !== null) room.latest = this;
    this.#without = new Array<number>(channels).fill(0);
    if (spare !== null && spare.channels === channels) {
      this.#times = spare.#times;
      this.#values = spare.#values;
      this.#faults = spare.#faults;
      return;
    }
    this.#times = new Float64Array(FIRST_ROOM);
    this.#values = Array.from({ length: channels }, () => new Float64Array(FIRST_ROOM));
    this.#faults = Array.from({ length: channels }, () => new Uint8Array(FIRST_ROOM));
  }

  get length(): number {
    return this.#to - this.#from;
  }

  timeAt(index: number): number {
    return this.#times[this.#from + index]!;
  }

  /** Temperature in °C; NaN where there is none. */
  valueAt(channel: number, index: number): number {
    return this.#values[channel]![this.#from + index]!;
  }

  faultAt(channel: number, index: number): ChannelFault | null {
    const code = this.#faults[channel]![this.#from + index]!;
    return code === 0 ? null : CHANNEL_FAULTS[code - 1]!;
  }

  append(reading: Reading): void {
    const at = this.#newRow(reading.timeS);
    for (let channel = 0; channel < this.channels; channel++) {
      const value = reading.values[channel];
      if (value?.kind === 'temperature') this.#put(channel, at, value.temperatureC, 0);
      else
        this.#put(
          channel,
          at,
          Number.NaN,
          value?.kind === 'fault' ? 1 + CHANNEL_FAULTS.indexOf(value.fault) : 0,
        );
    }
  }

  /** The same as `append` with the reading at a row of columns. */
  appendRow({ channels, timesS, temperaturesC, kinds }: ReadingColumns, row: number): void {
    const at = this.#newRow(timesS[row]!);
    for (let channel = 0; channel < this.channels; channel++) {
      const kind = channel < channels ? kinds[row * channels + channel]! : 1;
      if (kind === 0) this.#put(channel, at, temperaturesC[row * channels + channel]!, 0);
      else this.#put(channel, at, Number.NaN, kind - 1);
    }
  }

  /** Forgets readings before a time. */
  trimBefore(timeS: number): void {
    this.#from += this.indexFrom(timeS);
  }

  /** Index of the first reading at or after a time; `length` when there is none. */
  indexFrom(timeS: number): number {
    let low = this.#from;
    let high = this.#to;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (this.#times[middle]! < timeS) low = middle + 1;
      else high = middle;
    }
    return low - this.#from;
  }

  /** Index of the first reading after a time; `length` when there is none. */
  indexAfter(timeS: number): number {
    let index = this.indexFrom(timeS);
    while (index < this.length && this.timeAt(index) <= timeS) index++;
    return index;
  }

  /**
   * Times and temperatures of `count` readings from an index on, valid ones only: a view where all are valid, to be used
   * before the next reading and never altered.
   */
  valid(
    channel: number,
    first: number,
    count: number,
  ): { readonly timesS: Float64Array; readonly valuesC: Float64Array } {
    if (this.#without[channel] === 0) {
      const from = this.#from + first;
      return {
        timesS: this.#times.subarray(from, from + count),
        valuesC: this.#values[channel]!.subarray(from, from + count),
      };
    }
    const timesS = new Float64Array(count);
    const valuesC = new Float64Array(count);
    const found = this.#copyValid(channel, first, timesS, valuesC);
    return { timesS: timesS.subarray(0, found), valuesC: valuesC.subarray(0, found) };
  }

  /** Copies times and temperatures from an index on, valid ones only, as many readings as fit; returns how many were valid. */
  #copyValid(channel: number, first: number, timesS: Float64Array, valuesC: Float64Array): number {
    const values = this.#values[channel]!;
    const times = this.#times;
    const from = this.#from + first;
    const end = from + timesS.length;
    let count = 0;
    for (let at = from; at < end; at++) {
      const valueC = values[at]!;
      if (Number.isNaN(valueC)) continue;
      timesS[count] = times[at]!;
      valuesC[count++] = valueC;
    }
    return count;
  }

  #newRow(timeS: number): number {
    if (this.#to === this.#times.length) this.#makeRoom();
    this.#times[this.#to] = timeS;
    return this.#to++;
  }

  #put(channel: number, at: number, temperatureC: number, fault: number): void {
    const overRange = temperatureC > HIGHEST_C || temperatureC < LOWEST_C;
    const known = !overRange && Number.isFinite(temperatureC);
    if (!known) this.#without[channel]!++;
    this.#values[channel]![at] = known ? temperatureC : Number.NaN;
    this.#faults[channel]![at] = overRange ? OVER_RANGE : fault;
  }

  #makeRoom(): void {
    if (this.#from > this.#times.length / 2) {
      for (const array of [this.#times, ...this.#values, ...this.#faults])
        array.copyWithin(0, this.#from, this.#to);
      this.#to -= this.#from;
      this.#from = 0;
      return;
    }
    const size = this.#times.length * 2;
    this.#times = copyInto(new Float64Array(size), this.#times);
    this.#values = this.#values.map((values) => copyInto(new Float64Array(size), values));
    this.#faults = this.#faults.map((faults) => copyInto(new Uint8Array(size), faults));
  }
}

function copyInto<A extends Float64Array | Uint8Array>(target: A, source: A): A {
  target.set(source);
  return target;
}
