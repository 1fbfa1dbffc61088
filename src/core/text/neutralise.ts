export interface NeutraliseOptions {
  /** Most characters of the result; what is longer ends in `…`. Default 200. */
  readonly longest?: number;
}

/** Everything that steers a terminal, hides, reorders or is not assigned; spaces other than U+0020. */
const UNSAFE = /[\p{C}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}]|[^\S ]/gu;
/** A third and further combining mark on one letter (a pile of marks climbs over the lines around it). */
const PILED_MARK = /(?<=[\p{Mn}\p{Me}]{2})[\p{Mn}\p{Me}]/gu;

/**
 * Makes text from a reader or a file safe to show on a terminal. Control characters, escape sequences, C1 codes,
 * direction marks, zero-width characters and lone surrogates become visible (`\x1B`, `\u{202E}`), odd spaces too.
 * Text of one character per byte that holds UTF-8 (`Â°`) is decoded (`°`) where its bytes are valid UTF-8.
 */
export function neutralise(text: string, { longest = 200 }: NeutraliseOptions = {}): string {
  if (text.length <= longest && /^[\x20-\x7e]*$/.test(text)) return text;
  // A character takes at most four bytes; more than this can never be shown.
  const head = decodeUtf8Bytes(text.slice(0, 4 * longest + 4));
  const safe = head.replace(UNSAFE, visible).replace(PILED_MARK, visible);
  const letters = [...safe];
  return letters.length <= longest && text.length <= 4 * longest + 4
    ? safe
    : `${letters.slice(0, Math.max(0, longest - 1)).join('')}…`;
}

function visible(character: string): string {
  const code = character.codePointAt(0) as number;
  const digits = code.toString(16).toUpperCase();
  return code <= 0xff ? `\\x${digits.padStart(2, '0')}` : `\\u{${digits}}`;
}

/** Two to four characters that stand for the bytes of one UTF-8 character (lead and continuation bytes). */
const UTF8_SEQUENCE = /[\xc2-\xdf][\x80-\xbf]|[\xe0-\xef][\x80-\xbf]{2}|[\xf0-\xf4][\x80-\xbf]{3}/g;

function decodeUtf8Bytes(text: string): string {
  if (/[^\0-\xff]/.test(text)) return text;
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  return text.replace(UTF8_SEQUENCE, (sequence) => {
    const decoded = decoder.decode(Uint8Array.from(sequence, (letter) => letter.charCodeAt(0)));
    return decoded.includes('\uFFFD') ? sequence : decoded;
  });
}
