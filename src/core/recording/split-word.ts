/** First word and what follows its space; the second is empty where nothing follows. */
export function splitWord(text: string): readonly [word: string, rest: string] {
  const space = text.indexOf(' ');
  return space < 0 ? [text, ''] : [text.slice(0, space), text.slice(space + 1)];
}
