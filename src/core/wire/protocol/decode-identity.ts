import type { ReaderIdentity, ThermocoupleType } from '../WireEvent.ts';
import { PROTOCOL_MOST_CHANNELS, RATE_HZ } from './protocol-limits.ts';
import { decimalNumber } from './read-field.ts';

const REQUIRED = ['name', 'firmware', 'serial', 'types', 'sends', 'rates', 'rate', 'contact'];
const UNKNOWN = '-';

/**
 * Reads the content of an identity line, `identity VERSION key=value …`. Keys of later versions are passed over.
 * Null if a required key is missing, a key comes twice, or a value is not what the protocol allows.
 */
export function decodeIdentity(content: string): ReaderIdentity | null {
  const [, version, ...pairs] = content.split(' ');
  if (version === undefined || !/^[1-9][0-9]{0,2}$/.test(version)) return null;
  const values = new Map<string, string>();
  for (const pair of pairs) {
    const [, key, value] = /^([a-z][a-z0-9-]*)=(.+)$/.exec(pair) ?? [];
    if (key === undefined || value === undefined || values.has(key)) return null;
    values.set(key, value);
  }
  if (!REQUIRED.every((key) => values.has(key))) return null;
  const valueAt = (key: string): string => values.get(key) as string;

  const types = valueAt('types').split(',');
  const sends = { celsius: 'temperature', emf: 'emf' }[valueAt('sends')] as 'temperature' | 'emf' | undefined;
  const ratesHz = valueAt('rates').split(',').map(rate);
  const rateHz = rate(valueAt('rate'));
  const contact = valueAt('contact');
  const stepText = values.get('step');
  const resolutionC = stepText === undefined ? null : step(stepText);
  if (!types.every((type) => /^[KJTENRSB-]$/.test(type)) || types.length > PROTOCOL_MOST_CHANNELS)
    return null;
  if (sends === undefined || (contact !== 'yes' && contact !== 'no')) return null;
  if (ratesHz.some(Number.isNaN) || !ratesHz.includes(rateHz) || Number.isNaN(resolutionC)) return null;

  const known = (text: string): string | null => (text === UNKNOWN ? null : text);
  return {
    name: known(valueAt('name')),
    firmwareVersion: known(valueAt('firmware')),
    serialNumber: known(valueAt('serial')),
    channels: types.map((type, index) => ({
      number: index + 1,
      name: null,
      thermocoupleType: known(type) as ThermocoupleType | null,
      sends,
      resolutionC,
    })),
    ratesHz,
    rateHz,
    hasContact: contact === 'yes',
  };
}

const encoder = new TextEncoder();

function rate(text: string): number {
  return decimalNumber(encoder.encode(text), 0, text.length, RATE_HZ);
}

function step(text: string): number {
  const range = { least: 0.0001, most: 10, digits: 2, decimals: 6 };
  return decimalNumber(encoder.encode(text), 0, text.length, range);
}
