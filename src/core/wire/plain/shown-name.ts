/**
 * A heading or label from a reader or file, fit to stand inside a sentence: control and direction
 * characters replaced, spaces joined, at most 40 characters.
 */
export function shownName(text: string): string {
  const clean = text
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const characters = Array.from(clean);
  return characters.length > 40 ? `${characters.slice(0, 39).join('')}…` : clean;
}
