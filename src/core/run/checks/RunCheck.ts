import type { RunFacts } from '../RunFacts.ts';
import type { RunReason } from '../RunResult.ts';

/** One thing that can be wrong with a run: null when it is not. Pure; sees only the facts. */
export type RunCheck = (facts: RunFacts) => RunReason | null;
