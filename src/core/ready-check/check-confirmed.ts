import type { ReadyFacts, ReadyFinding } from './ReadyCheck.ts';

/** What only a person can see or hear: the tip's place with the cautions, and the bell. */
export function checkConfirmed({ confirmed }: ReadyFacts, item: 'placement' | 'bell'): ReadyFinding {
  return { state: confirmed.includes(item) ? 'ready' : 'ask', code: item, facts: {} };
}
