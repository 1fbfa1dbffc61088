/** Bytes looked at to guess a UTF-16 without byte order mark. */
const LOOKED_AT = 512;

/**
 * Text of a file of unknown making: UTF-8 (with or without byte order mark), UTF-16 (by byte order mark, or because
 * every other byte is zero), else Windows-1252, the usual single-byte code of loggers (degree sign 0xB0).
 * Never fails; `cutAtEnd` allows for a last character that is cut.
 */
export function decodeText(bytes: Uint8Array, options: { readonly cutAtEnd?: boolean } = {}): string {
  const utf16 = utf16Kind(bytes);
  if (utf16 !== null) return new TextDecoder(utf16).decode(bytes);
  const utf8 = new TextDecoder('utf-8', { fatal: true });
  try {
    return utf8.decode(bytes, { stream: options.cutAtEnd ?? false });
  } catch {
    // Not UTF-8: the fatal decoder says so by throwing, and there is nothing more to learn from it.
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function utf16Kind(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const pairs = Math.floor(Math.min(bytes.length, LOOKED_AT) / 2);
  let zeroFirst = 0;
  let zeroSecond = 0;
  for (let pair = 0; pair < pairs; pair += 1) {
    if (bytes[2 * pair] === 0) zeroFirst += 1;
    if (bytes[2 * pair + 1] === 0) zeroSecond += 1;
  }
  if (pairs >= 2 && zeroSecond > 0.8 * pairs && zeroFirst === 0) return 'utf-16le';
  if (pairs >= 2 && zeroFirst > 0.8 * pairs && zeroSecond === 0) return 'utf-16be';
  return null;
}
