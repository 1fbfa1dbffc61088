/**
 * What a terminal of this size shows after this output, row by row without colours: enough of a terminal for what the
 * program sends (moves, erasing, line ends), no more.
 */
export function terminalPicture(output: string, rows: number): readonly string[] {
  const cells: string[][] = Array.from({ length: rows }, () => []);
  let [row, column] = [0, 0];
  const tokens = output.matchAll(/\u001b\[([0-9;?]*)([A-Za-z])|\u001b.|[\s\S]/gu);
  for (const [token, numbers = '', command] of tokens) {
    const [first = '', second = ''] = numbers.split(';');
    const count = Number(first) || 1;
    if (command === undefined) {
      if (token === '\n') row = Math.min(rows - 1, row + 1);
      else if (token === '\r') column = 0;
      else if (token >= ' ' && token.length === 1) {
        const line = cells[row] ?? [];
        while (line.length < column) line.push(' ');
        line[column++] = token;
      }
    } else if (command === 'H') [row, column] = [Math.min(rows, count) - 1, (Number(second) || 1) - 1];
    else if (command === 'G') column = count - 1;
    else if (command === 'A') row = Math.max(0, row - count);
    else if (command === 'B') row = Math.min(rows - 1, row + count);
    else if (command === 'J' && first === '2') for (const line of cells) line.length = 0;
    else if (command === 'K') {
      const line = cells[row] ?? [];
      if (first === '2') line.length = 0;
      else line.length = Math.min(line.length, column);
    }
  }
  return cells.map((line) => line.join('').trimEnd());
}
