import type { Hasher } from '../recording/Hasher.ts';

/** Characters hashed together. */
const PIECE = 65_536;

/**
 * SHA-256 of what a logger's file says: its decoded text, whatever the encoding, without byte order mark, spaces at the
 * ends of lines and blank lines at the end, every line ended by one line feed. The same log saved again by another program,
 * or sent by mail, has the same.
 */
export function contentSha256(text: string, createHasher: () => Hasher): string {
  const hasher = createHasher();
  const plain = text
    .replace(/^\uFEFF/, '')
    .replace(/[ \t]*(?:\r\n|\r|\n)/g, '\n')
    .replace(/\s+$/, '');
  for (let from = 0; from < plain.length; from += PIECE) hasher.update(plain.slice(from, from + PIECE));
  return hasher.digestHex();
}
