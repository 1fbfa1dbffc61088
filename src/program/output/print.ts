import { takesUnicode } from '../../adapters/terminal/how-to-draw.ts';
import { asciiText } from '../../core/screen/ascii-text.ts';
import { wrapToColumns } from './wrap-to-columns.ts';

/** Writes one line (or several) of a result to standard output; on a terminal long lines wrap between words, in ASCII where it has no more. */
export function print(text: string): void {
  const { columns, isTTY } = process.stdout;
  const letters = isTTY === true && !takesUnicode(process.env, process.platform) ? asciiText(text) : text;
  const shown = isTTY === true && columns > 0 ? wrapToColumns(letters, columns) : letters;
  process.stdout.write(shown.endsWith('\n') ? shown : `${shown}\n`);
}

/** Writes a result as JSON; refuses numbers that JSON would turn into null without a word. */
export function printJson(value: unknown): void {
  const text = JSON.stringify(
    value,
    (key, item) => {
      if (typeof item === 'number' && !Number.isFinite(item))
        throw new RangeError(`result "${key}" is not a finite number`);
      return item;
    },
    2,
  );
  process.stdout.write(`${text}\n`);
}
