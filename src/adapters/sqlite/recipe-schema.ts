import * as v from 'valibot';
import type { Recipe } from '../../core/recipe/Recipe.ts';

const figure = v.pipe(v.number(), v.finite());
const figureOrNull = v.nullable(figure);
const textOrNull = v.nullable(v.string());

const schema = v.looseObject({
  assemblyName: v.string(),
  pressName: v.string(),
  version: v.number(),
  acceptedAt: v.string(),
  initials: v.string(),
  note: v.string(),
  provisional: v.boolean(),
  platenSetPointC: v.nullable(v.looseObject({ upper: figure, lower: figure })),
  platenMeasuredC: v.looseObject({ upper: figureOrNull, lower: figureOrNull }),
  gaugePsi: figureOrNull,
  pressing: v.nullish(
    v.looseObject({
      gaugeBy: v.picklist(['worked-out', 'confirmed', 'stated']),
      netFacingPsi: figure,
      ringOuterDiameterMm: figure,
      ringInnerDiameterMm: figure,
      ramBoreMm: figure,
      ramRodMm: figureOrNull,
      rams: figure,
    }),
  ),
  targetC: figure,
  rule: v.string(),
  ruleReason: textOrNull,
  soakS: figure,
  holdS: figure,
  marginS: figure,
  dwellS: figure,
  dip: v.picklist(['restarts', 'pauses']),
  statistics: v.looseObject({ runs: v.number(), meanSoakS: figureOrNull }),
  restsOn: v.array(v.looseObject({ recordingId: v.string(), runNumber: v.number() })),
  adhesive: textOrNull,
  dataSheetRevision: textOrNull,
  highestDwellS: figureOrNull,
  highestPeakC: figureOrNull,
  leastRecoveryS: figureOrNull,
  runRuleVersion: v.number(),
  simulated: v.boolean(),
});

/** A stored recipe version; fields that later programs add are kept. */
export const recipeSchema = schema as unknown as v.GenericSchema<unknown, Recipe>;
