import { cureRun } from './cure-run.ts';
import { fitRun } from './fit-run.ts';
import { gatherRunFacts } from './gather-run-facts.ts';
import { judgeRun } from './judge-run.ts';
import type { RunFacts } from './RunFacts.ts';
import { RUN_RULE_VERSION, type RunResult } from './RunResult.ts';
import type { RunUnderWay } from './RunUnderWay.ts';

/**
 * The result of a run from all of its readings: soak time = crossing of the slowest bond-line channel less press
 * closed, u² = u²(crossing) + u²(closing), hold, verdict with reasons.
 */
export function finishRun(run: RunUnderWay, endedBy: RunFacts['endedBy'], endedS: number): RunResult {
  const facts = gatherRunFacts(run, endedBy, endedS);
  const { verdict, reasons } = judgeRun(facts);
  const { crossing, pressClosed, onset, soakTimeS } = facts;
  const closedUntilS = Math.min(run.closedUntilS, endedS);
  const { lowestC, ...hold } = facts.hold ?? { lowestC: null };
  return {
    ruleVersion: RUN_RULE_VERSION,
    runNumber: run.number,
    pressClosed,
    onset: onset === null ? null : { timeS: onset.timeS, standardUncertaintyS: onset.standardUncertaintyS },
    provisionalCrossing: run.firstProvisional,
    crossing,
    crossings: facts.crossings,
    soakTimeS,
    soakTimeStandardUncertaintyS:
      soakTimeS === null || crossing === null || pressClosed === null
        ? null
        : Math.hypot(crossing.standardUncertaintyS, pressClosed.standardUncertaintyS),
    openedS: facts.openedS,
    endedS: facts.endedS,
    startC: facts.startC,
    peakC: facts.peakC,
    lowestAfterCrossingC: lowestC,
    hold: 'wantedS' in hold ? hold : null,
    platenAtClosingC: facts.platenAtClosingC,
    conditions: facts.conditions,
    notes: [...run.notes],
    verdict,
    reasons,
    fit: fitRun(facts, { riseFromS: run.riseFromS, closedUntilS }),
    cure: cureRun(facts, closedUntilS),
  };
}
