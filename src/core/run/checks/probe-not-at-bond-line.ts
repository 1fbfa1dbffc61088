import type { RunCheck } from './RunCheck.ts';
import { startsLate, wrongPlateau } from './wrong-plateau.ts';

/** Slow start and low plateau: the tip is not at the bond line, or is taped over. */
export const probeNotAtBondLine: RunCheck = (facts) => {
  const found = wrongPlateau(facts);
  if (found === null || found.high || !startsLate(found)) return null;
  return {
    code: 'probe-not-at-bond-line',
    severity: 'suspect',
    facts: {
      channel: found.one.channel + 1,
      role: found.one.role,
      plateauC: found.plateauC,
      platenC: found.platenC,
      delayS: found.delayS,
    },
  };
};
