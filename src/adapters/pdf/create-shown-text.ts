import * as fontkit from 'fontkit';
import { neutralise } from '../../core/text/neutralise.ts';

/**
 * Makes text fit for a PDF: harmless, and characters that the typeface lacks written out (`\u{4E2D}`) in place of
 * an empty box, so that nothing is lost and nothing passes for something else.
 */
export function createShownText(fontFile: string): (text: string) => string {
  const font = fontkit.openSync(fontFile);
  const has = (codePoint: number): boolean =>
    'hasGlyphForCodePoint' in font && font.hasGlyphForCodePoint(codePoint);
  return (text) =>
    Array.from(neutralise(text, { longest: 4000 }), (character) => {
      const codePoint = character.codePointAt(0) as number;
      return has(codePoint) ? character : `\\u{${codePoint.toString(16).toUpperCase()}}`;
    }).join('');
}
