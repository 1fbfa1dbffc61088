import { EMPTY_INPUT, type InputBuffer, type NamedKey, type ScreenInput } from './ScreenInput.ts';

/** Characters closer together than this belong to one burst, µs. */
export const BURST_US = 50_000;
const LONGEST_SCAN = 200;

/** `atUs` stamps the key; `handUs` is the clock of the hand that presses it, where the screen's own runs faster or stands. */
export type RawInput = { readonly atUs: number; readonly handUs?: number } & (
  | { readonly kind: 'character'; readonly character: string }
  | { readonly kind: 'named'; readonly name: NamedKey }
  | { readonly kind: 'tick' }
);

export interface Classified {
  readonly buffer: InputBuffer;
  readonly inputs: readonly ScreenInput[];
}

/**
 * Tells single keys from scans. A character waits up to 50 ms for the next one; alone it is a key, stamped with
 * the time it came; a burst ended by Enter is one scan; a burst of one repeated character (a key held down) is
 * that key once; any other burst is refused as several keys together.
 */
export function classifyInput(buffer: InputBuffer, raw: RawInput): Classified {
  const handUs = raw.handUs ?? raw.atUs;
  const inBurst = buffer.text !== '' && handUs - buffer.latestUs < BURST_US;
  if (raw.kind === 'tick') return inBurst || buffer.text === '' ? { buffer, inputs: [] } : settle(buffer);
  if (raw.kind === 'named') {
    if (inBurst && raw.name === 'enter') {
      return { buffer: EMPTY_INPUT, inputs: [{ kind: 'scan', text: buffer.text, atUs: buffer.firstUs }] };
    }
    return {
      buffer: EMPTY_INPUT,
      inputs: [...settle(buffer).inputs, { kind: 'key', name: raw.name, atUs: raw.atUs }],
    };
  }
  if (!inBurst) {
    const begun = { text: raw.character, firstUs: raw.atUs, latestUs: handUs };
    return { buffer: begun, inputs: settle(buffer).inputs };
  }
  const text = buffer.text.length < LONGEST_SCAN ? buffer.text + raw.character : buffer.text;
  return { buffer: { ...buffer, text, latestUs: handUs }, inputs: [] };
}

function settle(buffer: InputBuffer): Classified {
  if (buffer.text === '') return { buffer: EMPTY_INPUT, inputs: [] };
  const characters = new Set(buffer.text.toLowerCase());
  const [only] = characters;
  const input: ScreenInput =
    characters.size === 1 && only !== undefined
      ? { kind: 'key', name: only === ' ' ? 'space' : only, atUs: buffer.firstUs }
      : { kind: 'keys-together', atUs: buffer.firstUs };
  return { buffer: EMPTY_INPUT, inputs: [input] };
}
