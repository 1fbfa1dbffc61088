/** Writes one line (or several) of a result to standard output. */
export function print(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
}

/** Writes a result as JSON; refuses numbers that JSON would turn into null without a word. */
export function printJson(value: unknown): void {
  print(
    JSON.stringify(
      value,
      (key, item) => {
        if (typeof item === 'number' && !Number.isFinite(item))
          throw new RangeError(`result "${key}" is not a finite number`);
        return item;
      },
      2,
    ),
  );
}
