import { extensionReversed } from './extension-reversed.ts';
import type { RunCheck } from './RunCheck.ts';
import { startsLate, wrongPlateau } from './wrong-plateau.ts';

/** The curve levels off where no part between these platens can, from a right start: wrong by a growing factor. */
export const wrongThermocoupleType: RunCheck = (facts) => {
  const found = wrongPlateau(facts);
  if (found === null || extensionReversed(facts) !== null) return null;
  if (!found.high && startsLate(found)) return null;
  return {
    code: 'wrong-thermocouple-type',
    severity: 'suspect',
    facts: {
      channel: found.one.channel + 1,
      role: found.one.role,
      plateauC: found.plateauC,
      platenC: found.platenC,
    },
  };
};
