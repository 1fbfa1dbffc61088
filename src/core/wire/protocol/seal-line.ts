import { DwellwrightError } from '../../DwellwrightError.ts';
import { lineChecksum } from './line-checksum.ts';
import { PROTOCOL_LONGEST_LINE } from './protocol-limits.ts';

const encoder = new TextEncoder();

/**
 * Puts `#` and the four digits of the checksum behind a line's content; the line end is the sender's matter.
 * Refuses content that the protocol cannot carry (not printable ASCII, a `#`, too long).
 */
export function sealLine(content: string): string {
  if (!/^[\x20-\x22\x24-\x7e]+$/.test(content) || content.length + 5 > PROTOCOL_LONGEST_LINE) {
    throw new DwellwrightError(
      'line-not-sendable',
      `a protocol line requires 1 to ${PROTOCOL_LONGEST_LINE - 5} printable ASCII characters without #, ` +
        `came ${content.length} characters: ${JSON.stringify(content.slice(0, 60))}`,
    );
  }
  const checksum = lineChecksum(encoder.encode(content)).toString(16).toUpperCase().padStart(4, '0');
  return `${content}#${checksum}`;
}
