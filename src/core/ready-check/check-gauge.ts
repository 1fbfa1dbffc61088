import type { ReadyFacts, ReadyFinding } from './ReadyCheck.ts';

/** The ram's gauge stands where this ring needs it: a person reads it and confirms. */
export function checkGauge({ gauge, confirmed }: ReadyFacts): ReadyFinding {
  const state = confirmed.includes('gauge') ? 'ready' : 'ask';
  if (gauge === null) return { state, code: 'gauge-unknown', facts: {} };
  return {
    state,
    code: 'gauge',
    facts: {
      gaugePsi: gauge.gaugePsi,
      lowPsi: gauge.bandLowGaugePsi,
      highPsi: gauge.bandHighGaugePsi,
      netFacingPsi: gauge.netFacingPsi,
    },
  };
}
