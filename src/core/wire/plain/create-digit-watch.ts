import type { PlainContent } from './PlainField.ts';

/** A misfit that comes this often among the latest lines is the reader's habit, not a cut line. */
const HABIT = 3;
const AMONG = 20;
/** A reading that loses a leading digit and moves by more than this, in the unit printed, is a cut line until it persists. */
const LARGEST_STEP = 20;

/**
 * Watches the digits of one column and tells a cut or glued number (`23` or `231.2` for `231.25`,
 * `31.25` for `231.25`, `231.2575`) from a whole one. Rule, common practice, no source:
 *  - the number of decimals must be one this column has shown; a new number of decimals is believed once
 *    it came 3 times within 20 lines (then the reader drops trailing zeros);
 *  - a number with fewer digits before the decimal sign than the last reading, and more than 20 away from it,
 *    is believed once it came 3 times in a row.
 * With `decimalsVary` the first rule is left out: JSON drops zeros at the end, and its signs show a whole number.
 * What no rule on one line can see: a cut of a reader without decimals that loses no leading digit.
 */
export function createDigitWatch(
  seen: readonly PlainContent[],
  { decimalsVary = false }: { readonly decimalsVary?: boolean } = {},
): (content: PlainContent) => boolean {
  const known = new Set<number>();
  const strange: { decimals: number; line: number }[] = [];
  let last: { value: number; integerDigits: number } | null = null;
  let line = 0;
  let fallen = 0;
  const counts = new Map<number, number>();
  for (const content of seen) {
    if (content.kind !== 'number') continue;
    counts.set(content.decimals, (counts.get(content.decimals) ?? 0) + 1);
    last = content;
  }
  const [usual] = [...counts].toSorted((a, b) => b[1] - a[1] || b[0] - a[0]);
  if (usual) known.add(usual[0]);
  return (content) => {
    line += 1;
    if (content.kind !== 'number') return true;
    if (known.size === 0) known.add(content.decimals);
    if (!decimalsVary && !known.has(content.decimals)) {
      strange.push({ decimals: content.decimals, line });
      while ((strange[0]?.line ?? line) <= line - AMONG) strange.shift();
      if (strange.filter((one) => one.decimals === content.decimals).length < HABIT) return false;
      known.add(content.decimals);
    }
    const lost =
      last !== null &&
      content.integerDigits < last.integerDigits &&
      Math.abs(content.value - last.value) > LARGEST_STEP;
    fallen = lost ? fallen + 1 : 0;
    if (lost && fallen < HABIT) return false;
    last = content;
    fallen = 0;
    return true;
  };
}
