import { readingFromEmf } from '../thermocouple/reading-from-emf.ts';
import type { ChannelValue, ReaderIdentity, ThermocoupleType } from '../wire/WireEvent.ts';
import type { ReadingValue } from './StreamEvent.ts';

const MISSING: ReadingValue = Object.freeze({ kind: 'missing' });
const IMPOSSIBLE: ReadingValue = Object.freeze({ kind: 'fault', fault: 'unspecified' });
/** No body is colder; such a figure is a fault that its layout did not mark. Exact by definition of the kelvin. */
const ABSOLUTE_ZERO_C = -273.15;

export interface ValueReader {
  /** One value per channel; the same array where nothing had to be changed. */
  read(channels: readonly ChannelValue[]): readonly ReadingValue[];
  learn(identity: ReaderIdentity): void;
  /** Channels (from 1) that sent emf since the reader last named itself, while their type was not known. */
  readonly untyped: ReadonlySet<number>;
}

/**
 * Channel values to temperatures. An emf is converted with the type that the reader states for the channel, or
 * else the one stated by the user; without either the value is missing, never guessed. NaN and ±Infinity become
 * missing, a temperature below absolute zero a fault.
 */
export function createValueReader(statedTypes: readonly (ThermocoupleType | null)[] = []): ValueReader {
  const readersTypes: (ThermocoupleType | null)[] = [];
  const untyped = new Set<number>();
  const readOne = (value: ChannelValue, index: number): ReadingValue => {
    if (value.kind === 'fault' || value.kind === 'missing') return value;
    if (value.kind === 'temperature') {
      if (!Number.isFinite(value.temperatureC)) return MISSING;
      return value.temperatureC < ABSOLUTE_ZERO_C ? IMPOSSIBLE : value;
    }
    const type = readersTypes[index] ?? statedTypes[index] ?? null;
    if (type === null) {
      untyped.add(index + 1);
      return MISSING;
    }
    if (!Number.isFinite(value.emfUv) || !Number.isFinite(value.coldJunctionC)) return MISSING;
    return readingFromEmf(type, value.emfUv, value.coldJunctionC);
  };
  return {
    read(channels) {
      let changed: ReadingValue[] | null = null;
      for (let index = 0; index < channels.length; index += 1) {
        const value = channels[index] as ChannelValue;
        const read = readOne(value, index);
        if (read === value) {
          if (changed !== null) changed.push(read);
          continue;
        }
        changed ??= channels.slice(0, index) as ReadingValue[];
        changed.push(read);
      }
      return changed ?? (channels as readonly ReadingValue[]);
    },
    learn(identity) {
      untyped.clear();
      for (const channel of identity.channels)
        if (channel.number >= 1) readersTypes[channel.number - 1] = channel.thermocoupleType;
    },
    untyped,
  };
}
