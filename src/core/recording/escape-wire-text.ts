/** Anything but printable ASCII, the backslash itself, and a last space (editors trim it). */
const NEEDS_ESCAPE = /[^\x20-\x7e]|\\| $/;
const ESCAPED = /[^\x20-\x7e]|\\| $/g;

/**
 * Text of a wire line as a recording keeps it: printable ASCII stands as it is, a backslash is doubled,
 * every other byte is `\xHH` (a character above one byte, which no wire sends, is `\uHHHH`).
 */
export function escapeWireText(text: string): string {
  return NEEDS_ESCAPE.test(text) ? text.replace(ESCAPED, escapeOne) : text;
}

/** One UTF-16 unit as `\\`, `\xHH` or `\uHHHH`. */
export function escapeOne(unit: string): string {
  if (unit === '\\') return '\\\\';
  const code = unit.charCodeAt(0);
  const hex = code.toString(16).toUpperCase();
  return code < 0x100 ? `\\x${hex.padStart(2, '0')}` : `\\u${hex.padStart(4, '0')}`;
}
