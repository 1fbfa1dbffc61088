const BEYOND_ASCII = /[\x80-\xff]/;
const BEYOND_BYTE = /[^\x00-\xff]/;

/**
 * Text of a received line that holds one character per byte: read as UTF-8 where it is valid UTF-8
 * (`°` sent as C2 B0), else left as Latin-1 (`°` sent as B0). ASCII is returned as it is.
 */
export function textFromBytes(line: string): string {
  if (!BEYOND_ASCII.test(line) || BEYOND_BYTE.test(line)) return line;
  const bytes = Uint8Array.from(line, (character) => character.charCodeAt(0));
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    // Not UTF-8: then each byte is a Latin-1 character already.
    return line;
  }
}

/** The reverse for text that is to travel as a received line: one character per UTF-8 byte. */
export function bytesFromText(text: string): string {
  if (!/[^\x00-\x7f]/.test(text)) return text;
  let line = '';
  for (const byte of new TextEncoder().encode(text)) line += String.fromCharCode(byte);
  return line;
}
