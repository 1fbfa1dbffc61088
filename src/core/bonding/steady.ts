/** A value that changes only once what is seen has differed for a stated time together: no flicker at an edge. */
export interface Steady<Value> {
  readonly value: Value;
  /** What is seen now, and since when, µs. */
  readonly seen: Value;
  readonly sinceUs: number;
}

/** The next steady value: `seen` at `atUs` counts once it has been seen for longer than `forUs` together. The first counts at once. */
export function steady<Value>(
  before: Steady<Value> | null,
  seen: Value,
  atUs: number,
  forUs: number,
): Steady<Value> {
  if (before === null) return { value: seen, seen, sinceUs: atUs };
  const sinceUs = before.seen === seen ? before.sinceUs : atUs;
  const value = seen !== before.value && atUs - sinceUs > forUs ? seen : before.value;
  return before.value === value && before.seen === seen ? before : { value, seen, sinceUs };
}
