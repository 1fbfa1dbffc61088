import { CureCounter } from '../cure/CureCounter.ts';
import type { CureResult } from '../cure/CureFacts.ts';
import type { RunFacts } from './RunFacts.ts';

/** Cure from press closed to its opening, by the coldest bond-line channel; null without data-sheet figures or closing. */
export function cureRun(facts: RunFacts, closedUntilS: number): CureResult | null {
  const { rules, pressClosed, trace, bondLine, intervalS } = facts;
  if (rules.cure == null || pressClosed === null) return null;
  const counter = new CureCounter(rules.cure, intervalS);
  for (let index = trace.indexFrom(pressClosed.timeS); index < trace.length; index++) {
    const timeS = trace.timeAt(index);
    if (timeS > closedUntilS) break;
    let coldestC = Number.POSITIVE_INFINITY;
    for (const { channel } of bondLine) {
      const valueC = trace.valueAt(channel, index);
      if (valueC < coldestC) coldestC = valueC;
    }
    if (coldestC < Number.POSITIVE_INFINITY) counter.add(timeS, coldestC);
  }
  return counter.result();
}
