import * as v from 'valibot';
import type { BondingCycle } from '../../core/bonding/BondingCycle.ts';

const figure = v.pipe(v.number(), v.finite());
const figureOrNull = v.nullable(figure);

/** A stored cycle of production; fields that later programs add are kept. */
export const cycleSchema = v.looseObject({
  cycleId: v.string(),
  assemblyName: v.string(),
  pressName: v.string(),
  recipeVersion: v.number(),
  recordingId: v.nullable(v.string()),
  simulated: v.boolean(),
  initials: v.nullable(v.string()),
  closedAt: v.string(),
  closedBy: v.picklist(['key', 'contact']),
  dwellWantedS: figure,
  dwellHeldS: figure,
  targetC: figure,
  holdWantedS: figure,
  holdCountedS: figureOrNull,
  hold: v.picklist(['verified', 'not-verified', 'not-measured']),
  platensAtClosingC: v.looseObject({ upper: figureOrNull, lower: figureOrNull }),
  lowestC: figureOrNull,
  peakC: figureOrNull,
  againstBand: v.optional(v.picklist(['inside', 'outside', 'not-compared'])),
  recordedAtS: v.optional(figureOrNull),
  result: v.picklist(['done', 'opened-early', 'hold-not-verified', 'platen-out-of-band', 'left']),
  flags: v.array(v.string()),
}) as v.GenericSchema<unknown, BondingCycle>;
