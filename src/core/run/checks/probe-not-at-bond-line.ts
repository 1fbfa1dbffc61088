import type { RunFacts } from '../RunFacts.ts';
import type { RunReason } from '../RunResult.ts';
import type { RunCheck } from './RunCheck.ts';
import { LATE_START_S, startsLate, wrongPlateau } from './wrong-plateau.ts';

/** Slow start and low plateau, or a lag against the other bond-line probes: the tip is not at the bond line, or is taped over. */
export const probeNotAtBondLine: RunCheck = (facts) => {
  const found = wrongPlateau(facts);
  if (found === null || found.high || !startsLate(found)) return lagAgainstOthers(facts);
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

/** The fitted curve of one probe leaves the start later than another's, although both rise about as steeply. */
function lagAgainstOthers(facts: RunFacts): RunReason | null {
  for (const one of facts.bondLine)
    for (const other of facts.bondLine) {
      if (one === other || one.fit === null || other.fit === null) continue;
      // A curve that would leave before the press closed belongs to a probe with a fault of its own.
      if (other.fit.departsS < (facts.pressClosed?.timeS ?? facts.fromS) - 0.5) continue;
      const lagS = one.fit.departsS - other.fit.departsS;
      const alike = one.fit.timeConstantS < 1.3 * other.fit.timeConstantS;
      const sound = one.fit.rmsC < 3 && other.fit.rmsC < 3;
      if (lagS <= LATE_START_S.againstOther || !alike || !sound || one.fit.plateauC >= other.fit.plateauC)
        continue;
      return {
        code: 'probe-not-at-bond-line',
        severity: 'suspect',
        facts: { channel: one.channel + 1, role: one.role, lagS, other: other.role },
      };
    }
  return null;
}
