import type { TextShape } from './Picture.ts';
import { INK } from './picture-svg.ts';

/** Words of a picture in its ink, upright and level; `y` is that of the base line. */
export function plainText(
  x: number,
  y: number,
  text: string,
  anchor: TextShape['anchor'],
  size: number,
): TextShape {
  return { kind: 'text', x, y, text, size, anchor, fill: INK };
}
