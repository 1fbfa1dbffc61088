import { checkSeal } from './check-seal.ts';
import { decodeRareLine } from './decode-rare-line.ts';
import { decodeSample } from './decode-sample.ts';
import { PROTOCOL_LONGEST_LINE } from './protocol-limits.ts';

const bytes = new Uint8Array(PROTOCOL_LONGEST_LINE);

/**
 * True for a line with a right checksum whose kind and content version 1 of the protocol knows: enough to recognise
 * a reader by one line (a line of another layout would pass about once in 65,536 tries even if it ended alike).
 */
export function isProtocolLine(text: string): boolean {
  const length = checkSeal(text, bytes);
  if (length < 0) return false;
  if (text.startsWith('sample ')) return decodeSample(bytes, 7, length) !== null;
  const event = decodeRareLine(text.slice(0, length));
  return event !== null && event !== 'unknown-kind';
}
