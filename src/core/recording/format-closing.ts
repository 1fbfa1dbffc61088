/** Closing line of a recording: number of entries and the SHA-256 of every byte before this line. */
export function formatClosing(entries: number, sha256Hex: string): string {
  return `end ${entries} sha256 ${sha256Hex}\n`;
}
