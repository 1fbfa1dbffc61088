/** Words broken into lines of at most `columns` characters; a longer word is cut. */
export function wrapWords(text: string, columns: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
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
