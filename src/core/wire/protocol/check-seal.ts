import { lineChecksum } from './line-checksum.ts';

/** The line does not end in `#` and four upper-case hexadecimal digits, or holds a byte that no line may hold. */
export const UNSEALED = -1;
export const BAD_CHECKSUM = -2;

const HASH = 0x23;
const SEAL_LENGTH = 5;

/**
 * Copies a line into `bytes` and checks the seal at its end: `#` and the checksum of everything before it.
 * Returns the length of the content, or UNSEALED or BAD_CHECKSUM. Lines longer than `bytes` are UNSEALED.
 */
export function checkSeal(text: string, bytes: Uint8Array): number {
  const length = text.length - SEAL_LENGTH;
  if (length < 1 || text.length > bytes.length || text.charCodeAt(length) !== HASH) return UNSEALED;
  let stated = 0;
  for (let at = length + 1; at < text.length; at++) {
    const digit = hexDigit(text.charCodeAt(at));
    if (digit < 0) return UNSEALED;
    stated = (stated << 4) | digit;
  }
  // Codes are joined so that one test after the loop finds any character that is no byte of ASCII.
  let seen = 0;
  for (let at = 0; at < length; at++) {
    const code = text.charCodeAt(at);
    seen |= code;
    bytes[at] = code;
  }
  if (seen > 0x7f) return BAD_CHECKSUM;
  return lineChecksum(bytes.subarray(0, length)) === stated ? length : BAD_CHECKSUM;
}

/** Upper case only: a digit whose case flipped on the way is a damaged line, not another spelling. */
function hexDigit(code: number): number {
  if (code >= 0x30 && code <= 0x39) return code - 0x30;
  if (code >= 0x41 && code <= 0x46) return code - 0x37;
  return -1;
}
