import { CureCounter } from './CureCounter.ts';
import type { CureFacts, CureResult } from './CureFacts.ts';

/** Cure of a whole trace (times s, temperatures °C, oldest first): see `CureCounter`. */
export function equivalentTimeS(
  timesS: ArrayLike<number>,
  valuesC: ArrayLike<number>,
  facts: CureFacts,
  intervalS: number,
): CureResult {
  const counter = new CureCounter(facts, intervalS);
  for (let i = 0; i < timesS.length; i += 1) counter.add(timesS[i]!, valuesC[i]!);
  return counter.result();
}
