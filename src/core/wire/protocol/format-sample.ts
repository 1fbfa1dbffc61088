import { DwellwrightError } from '../../DwellwrightError.ts';
import type { ChannelValue, SampleEvent } from '../WireEvent.ts';
import { FAULT_WORDS, MISSING_WORD } from './fault-words.ts';
import {
  COLD_JUNCTION_C,
  EMF_UV,
  type NumberRange,
  PROTOCOL_CLOCK_WRAP_US,
  PROTOCOL_MOST_CHANNELS,
  PROTOCOL_SEQUENCE_WRAP,
  TEMPERATURE_C,
} from './protocol-limits.ts';
import { sealLine } from './seal-line.ts';

export interface SampleFormat {
  /** Digits behind the point of °C, 0 to 6. */
  readonly temperatureDecimals?: number;
  /** Digits behind the point of µV, 0 to 6. */
  readonly emfDecimals?: number;
}

/**
 * Writes a sample as a reader sends it, without the line end. Refuses what a line cannot carry: a number out of range
 * or not finite (a reader sends a fault word instead), no sequence or time, no channel or more than 16.
 */
export function formatSample(
  sample: Omit<SampleEvent, 'kind'>,
  { temperatureDecimals = 2, emfDecimals = 1 }: SampleFormat = {},
): string {
  const { sequence, deviceTimeUs, channels } = sample;
  if (channels.length < 1 || channels.length > PROTOCOL_MOST_CHANNELS) {
    throw notSendable(`1 to ${PROTOCOL_MOST_CHANNELS} channels`, channels.length);
  }
  const fields = channels.map((value) => channelField(value, temperatureDecimals, emfDecimals));
  return sealLine(
    `sample ${counter(sequence, PROTOCOL_SEQUENCE_WRAP)} ${counter(deviceTimeUs, PROTOCOL_CLOCK_WRAP_US)} ${fields.join(' ')}`,
  );
}

function channelField(value: ChannelValue, temperatureDecimals: number, emfDecimals: number): string {
  switch (value.kind) {
    case 'temperature':
      return decimal(value.temperatureC, temperatureDecimals, TEMPERATURE_C);
    case 'emf': {
      const coldJunction = decimal(value.coldJunctionC, temperatureDecimals, COLD_JUNCTION_C);
      return `${decimal(value.emfUv, emfDecimals, EMF_UV)}@${coldJunction}`;
    }
    case 'fault':
      return FAULT_WORDS[value.fault];
    case 'missing':
      return MISSING_WORD;
  }
}

function decimal(value: number, decimals: number, range: NumberRange): string {
  if (!(value >= range.least && value <= range.most)) {
    throw notSendable(`a value from ${range.least} to ${range.most}`, value);
  }
  return value.toFixed(Math.min(decimals, range.decimals));
}

function counter(value: number | null, wrap: number): string {
  if (value === null || !Number.isInteger(value) || value < 0 || value >= wrap) {
    throw notSendable(`a whole number from 0 to ${wrap - 1}`, value);
  }
  return String(value);
}

function notSendable(expected: string, came: number | null): DwellwrightError {
  return new DwellwrightError('line-not-sendable', `a sample line requires ${expected}, came ${came}`);
}
