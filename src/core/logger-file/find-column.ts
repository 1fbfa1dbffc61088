/** A heading without its unit and case: `T1 (°C)` is found by `t1`. */
function bare(heading: string): string {
  return heading
    .replace(/\s*[[({<][^\])}>]*[\])}>]\s*/g, ' ')
    .trim()
    .toLowerCase();
}

/**
 * The column that the user names: by exact heading, by heading in any case or without its unit, or by number
 * from 1. Undefined where there is none, or where several headings fit.
 */
export function findColumn(names: readonly (string | null)[], wanted: string): number | undefined {
  const text = wanted.trim();
  const fitting = (test: (name: string) => boolean) =>
    names.flatMap((name, at) => (name !== null && test(name) ? [at] : []));
  for (const found of [
    fitting((name) => name === text),
    fitting((name) => name.toLowerCase() === text.toLowerCase()),
    fitting((name) => text !== '' && bare(name) === bare(text)),
  ]) {
    if (found.length === 1) return found[0];
    if (found.length > 1) return undefined;
  }
  const number = /^\d+$/.test(text) ? Number(text) : 0;
  return number >= 1 && number <= names.length ? number - 1 : undefined;
}
