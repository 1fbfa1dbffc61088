import { neutralise } from '../text/neutralise.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Text made harmless inside HTML or SVG, as content or as a quoted attribute: control characters and direction
 * marks become visible, the five characters of markup become entities.
 */
export function escapeMarkup(text: string): string {
  return neutralise(text, { longest: 4000 }).replace(
    /[&<>"']/g,
    (character) => ENTITIES[character] as string,
  );
}
