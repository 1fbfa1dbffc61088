/** Blanks where a line may break: not between a number and its unit, nor inside the name of a standard. */
const BREAK = /(?<!\d|\bJCGM) |(?<=\d) (?!(?:°?[FC]|s|ms|min|h|psi|kPa|bar|mm|in|GB|%)(?![A-Za-z]))/u;

/** Words broken into lines of at most `columns` characters, a number never without its unit; a longer word is cut. */
export function wrapWords(text: string, columns: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(BREAK)) {
    const joined = line === '' ? word : `${line} ${word}`;
    if (joined.length <= columns) {
      line = joined;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    while (line.length > columns) {
      lines.push(line.slice(0, columns));
      line = line.slice(columns);
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}
