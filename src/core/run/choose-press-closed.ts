import { LIMITS } from './limits.ts';
import type { ClosingSource, PressClosed, TimeEstimate } from './RunResult.ts';

export type ClosingMarks = Readonly<Record<ClosingSource, TimeEstimate | null>>;

const ORDER: readonly ClosingSource[] = ['contact', 'key', 'option', 'onset'];

/** Standard uncertainty of one source's mark, s; onset brings its own. */
export const MARK_UNCERTAINTY_S = {
  contact: LIMITS.contactUncertaintyS,
  key: LIMITS.keyUncertaintyS,
  option: LIMITS.optionUncertaintyS,
} as const;

/**
 * Press closed from all sources that exist: contact before key before option before onset of the rise.
 * `disagreementS` is the largest difference between two of the marks; the onset, which lags by the heat's way
 * through the part, is left out of it and judged by the late-mark check.
 */
export function choosePressClosed(marks: ClosingMarks): PressClosed | null {
  const all = ORDER.flatMap((by) => {
    const mark = marks[by];
    return mark === null ? [] : [{ by, timeS: mark.timeS, standardUncertaintyS: mark.standardUncertaintyS }];
  });
  const chosen = all[0];
  if (chosen === undefined) return null;
  const marked = all.filter((one) => one.by !== 'onset').map((one) => one.timeS);
  const disagreementS = marked.length < 2 ? null : Math.max(...marked) - Math.min(...marked);
  return { ...chosen, all, disagreementS };
}
