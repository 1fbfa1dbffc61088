const ESCAPE = /\\(?:\\|x([0-9A-Fa-f]{2})|u([0-9A-Fa-f]{4})|)/g;

/** Undoes `escapeWireText` and `escapePeopleText`; null when a backslash starts nothing known. */
export function unescapeText(text: string): string | null {
  if (!text.includes('\\')) return text;
  let known = true;
  const plain = text.replace(ESCAPE, (written, byteHex: string | undefined, unitHex: string | undefined) => {
    if (written === '\\\\') return '\\';
    const hex = byteHex ?? unitHex;
    if (hex !== undefined) return String.fromCharCode(Number.parseInt(hex, 16));
    known = false;
    return written;
  });
  return known ? plain : null;
}
