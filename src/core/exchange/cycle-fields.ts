import type { BondingCycle } from '../bonding/BondingCycle.ts';
import { type ExportField, field } from './ExportField.ts';

/** Fields of `export cycles`, one row a closing of the press in production. */
export const CYCLE_FIELDS: readonly ExportField<BondingCycle>[] = [
  field('cycleId', 'cycle', (cycle) => cycle.cycleId),
  field('assembly', 'assembly', (cycle) => cycle.assemblyName),
  field('press', 'press', (cycle) => cycle.pressName),
  field('recipeVersion', 'version of the recipe it was made by', (cycle) => cycle.recipeVersion),
  field(
    'recordingId',
    'recording that holds the readings; none without a reader',
    (cycle) => cycle.recordingId,
  ),
  field('simulated', 'true for a simulated reader or recipe', (cycle) => cycle.simulated),
  field('initials', 'who bonded', (cycle) => cycle.initials),
  field('closedAt', 'press closed, date and time', (cycle) => cycle.closedAt),
  field('closedBy', 'key or contact', (cycle) => cycle.closedBy),
  field('dwellWantedS', 'dwell of the recipe', (cycle) => cycle.dwellWantedS),
  field(
    'dwellHeldS',
    'press closed to opened; where the opening was not seen, to the last moment that was watched',
    (cycle) => cycle.dwellHeldS,
  ),
  field('targetC', 'bond-line target', (cycle) => cycle.targetC),
  field('holdWantedS', 'hold wanted', (cycle) => cycle.holdWantedS),
  field('holdCountedS', 'hold counted; none where not measured', (cycle) => cycle.holdCountedS),
  field('hold', 'verified, not-verified or not-measured', (cycle) => cycle.hold),
  field('upperPlatenAtClosingC', 'upper platen at closing', (cycle) => cycle.platensAtClosingC.upper),
  field('lowerPlatenAtClosingC', 'lower platen at closing', (cycle) => cycle.platensAtClosingC.lower),
  field('lowestAfterCrossingC', 'lowest bond-line temperature after the crossing', (cycle) => cycle.lowestC),
  field('peakC', 'highest bond-line temperature', (cycle) => cycle.peakC),
  field(
    'againstBand',
    'bond line against the recipe’s own runs: inside, outside or not-compared; none in cycles of earlier programs',
    (cycle) => cycle.againstBand ?? null,
  ),
  field(
    'recordedAtS',
    'press closed on the recording’s own time; none where not known',
    (cycle) => cycle.recordedAtS ?? null,
  ),
  field(
    'result',
    'done, opened-early, hold-not-verified, platen-out-of-band or left (not watched to the end): the gravest of what was noticed',
    (cycle) => cycle.result,
  ),
  field('flags', 'everything that was noticed', (cycle) => cycle.flags),
];
