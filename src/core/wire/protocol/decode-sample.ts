import type { ChannelValue, SampleEvent } from '../WireEvent.ts';
import { channelWord } from './fault-words.ts';
import {
  COLD_JUNCTION_C,
  EMF_UV,
  PROTOCOL_CLOCK_WRAP_US,
  PROTOCOL_MOST_CHANNELS,
  PROTOCOL_SEQUENCE_WRAP,
  TEMPERATURE_C,
} from './protocol-limits.ts';
import { decimalNumber, wholeNumber } from './read-field.ts';

const SPACE = 0x20;
const AT = 0x40;
const MINUS = 0x2d;

/**
 * Reads the content `sample SEQUENCE TIME VALUE…`, fields from byte `from` on; null if anything in it is not what
 * the protocol allows. This is the hot path of a fast reader: no text is cut out, no expression matched.
 */
export function decodeSample(bytes: Uint8Array, from: number, length: number): SampleEvent | null {
  let end = fieldEnd(bytes, from, length);
  const sequence = wholeNumber(bytes, from, end, 5, PROTOCOL_SEQUENCE_WRAP - 1);
  if (sequence < 0) return null;
  let at = end + 1;
  end = fieldEnd(bytes, at, length);
  const deviceTimeUs = wholeNumber(bytes, at, end, 10, PROTOCOL_CLOCK_WRAP_US - 1);
  if (deviceTimeUs < 0) return null;
  const channels: ChannelValue[] = [];
  while (end < length) {
    at = end + 1;
    end = fieldEnd(bytes, at, length);
    const value = channelValue(bytes, at, end);
    if (value === null || channels.length === PROTOCOL_MOST_CHANNELS) return null;
    channels.push(value);
  }
  return channels.length === 0 ? null : { kind: 'sample', sequence, deviceTimeUs, channels };
}

function fieldEnd(bytes: Uint8Array, from: number, length: number): number {
  let at = from;
  while (at < length && bytes[at] !== SPACE) at++;
  return at;
}

/** `231.25` is °C, `9218.4@24.31` emf in µV and cold junction in °C, a word a fault. */
function channelValue(bytes: Uint8Array, from: number, to: number): ChannelValue | null {
  const first = bytes[from] as number;
  if (from === to || (first > 0x39 && first !== AT)) return from === to ? null : wordValue(bytes, from, to);
  if (first < 0x30 && first !== MINUS) return null;
  let atSign = from;
  while (atSign < to && bytes[atSign] !== AT) atSign++;
  if (atSign === to) {
    const temperatureC = decimalNumber(bytes, from, to, TEMPERATURE_C);
    return Number.isNaN(temperatureC) ? null : { kind: 'temperature', temperatureC };
  }
  const emfUv = decimalNumber(bytes, from, atSign, EMF_UV);
  const coldJunctionC = decimalNumber(bytes, atSign + 1, to, COLD_JUNCTION_C);
  return Number.isNaN(emfUv) || Number.isNaN(coldJunctionC) ? null : { kind: 'emf', emfUv, coldJunctionC };
}

function wordValue(bytes: Uint8Array, from: number, to: number): ChannelValue | null {
  return channelWord(String.fromCharCode(...bytes.subarray(from, to)));
}
