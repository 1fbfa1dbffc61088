/** One of a line of statements of which the last is in force: decisions on a run, versions of a recipe. */
export interface Stated {
  /** What it says, without its place in the line. */
  readonly key: string;
  /** When it was said, ISO 8601. */
  readonly at: string;
}

/**
 * Which statement is in force after two lines become one: that of the line which holds all of the other's, as it knew
 * of them; else the one said last.
 */
export function inForce<Line extends Stated>(own: readonly Line[], other: readonly Line[]): Line | undefined {
  const ownLast = own.at(-1);
  const otherLast = other.at(-1);
  if (ownLast === undefined || otherLast === undefined) return ownLast ?? otherLast;
  if (holdsAll(own, other)) return ownLast;
  if (holdsAll(other, own)) return otherLast;
  const order = Date.parse(otherLast.at) - Date.parse(ownLast.at);
  if (order !== 0) return order > 0 ? otherLast : ownLast;
  return otherLast.key > ownLast.key ? otherLast : ownLast;
}

function holdsAll(line: readonly Stated[], others: readonly Stated[]): boolean {
  const keys = new Set(line.map((one) => one.key));
  return others.every((one) => keys.has(one.key));
}
