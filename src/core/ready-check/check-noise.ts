import type { ReadyFacts, ReadyFinding } from './ReadyCheck.ts';

/** Scatter of a sound probe stays below this, °C (standard deviation). Common practice, no source. */
export const NOISE_LIMIT_C = 1;
const SHORTEST_S = 5;

/** No channel scatters more than a sound probe does. */
export function checkNoise({ channels }: ReadyFacts): ReadyFinding {
  const seen = channels.filter((one) => one.noiseC !== null && one.overS >= SHORTEST_S);
  if (seen.length === 0) return { state: 'wait', code: 'noise-awaited', facts: {} };
  const worst = seen.reduce((most, one) => ((one.noiseC ?? 0) > (most.noiseC ?? 0) ? one : most));
  const facts = { noiseC: worst.noiseC ?? 0, limitC: NOISE_LIMIT_C };
  return facts.noiseC <= NOISE_LIMIT_C
    ? { state: 'ready', code: 'noise-low', facts }
    : {
        state: 'not-ready',
        code: 'noise-high',
        facts: { ...facts, channel: worst.channel, role: worst.role },
      };
}
