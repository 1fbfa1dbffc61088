/**
 * Wraps lines wider than `columns` between words; what follows is indented two spaces deeper than its line. Runs of
 * spaces inside a line that fits stay; a word wider than the window is left to the terminal.
 */
export function wrapToColumns(text: string, columns: number): string {
  return text
    .split('\n')
    .map((line) => (line.length <= columns ? line : wrapLine(line, columns)))
    .join('\n');
}

function wrapLine(line: string, columns: number): string {
  const indent = /^ */.exec(line)?.[0] ?? '';
  const deeper = `${indent}  `;
  const rows: string[] = [];
  let row = indent;
  for (const word of line.slice(indent.length).split(/ +/)) {
    const joined = row.trim() === '' ? `${row}${word}` : `${row} ${word}`;
    if (joined.length <= columns || row.trim() === '') row = joined;
    else {
      rows.push(row);
      row = `${deeper}${word}`;
    }
  }
  return [...rows, row].join('\n');
}
