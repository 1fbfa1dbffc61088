import * as v from 'valibot';
import type { RunResult } from '../../core/run/RunResult.ts';

const figure = v.pipe(v.number(), v.finite());
const figureOrNull = v.nullable(figure);
const estimate = { timeS: figure, standardUncertaintyS: figure };
const crossing = v.looseObject({ ...estimate, slopeCPerS: figure });

const schema = v.looseObject({
  ruleVersion: v.number(),
  runNumber: v.number(),
  pressClosed: v.nullable(
    v.looseObject({
      ...estimate,
      by: v.string(),
      all: v.array(v.looseObject({ ...estimate, by: v.string() })),
      disagreementS: figureOrNull,
    }),
  ),
  onset: v.nullable(v.looseObject(estimate)),
  provisionalCrossing: v.nullable(crossing),
  crossing: v.nullable(crossing),
  crossings: v.array(
    v.looseObject({ channel: v.number(), role: v.string(), crossing: v.nullable(crossing) }),
  ),
  soakTimeS: figureOrNull,
  soakTimeStandardUncertaintyS: figureOrNull,
  openedS: figureOrNull,
  endedS: figure,
  startC: figureOrNull,
  peakC: figureOrNull,
  lowestAfterCrossingC: figureOrNull,
  hold: v.nullable(
    v.looseObject({
      wantedS: figure,
      countedS: figure,
      longestUnbrokenS: figure,
      totalAboveS: figure,
      verified: v.boolean(),
      dips: v.array(v.looseObject({ fromS: figure, toS: figure, lowestC: figure })),
    }),
  ),
  platenAtClosingC: v.looseObject({ upper: figureOrNull, lower: figureOrNull }),
  conditions: v.looseObject({
    ring: v.nullable(v.string()),
    coating: v.nullable(v.string()),
    carrierId: v.nullable(v.string()),
    probe: v.nullable(v.string()),
  }),
  notes: v.array(v.string()),
  verdict: v.picklist(['good', 'suspect', 'unusable']),
  reasons: v.array(
    v.looseObject({
      code: v.string(),
      severity: v.picklist(['unusable', 'suspect', 'note']),
      facts: v.record(v.string(), v.union([figure, v.string()])),
    }),
  ),
  fit: v.optional(
    v.nullable(
      v.looseObject({
        plateauC: figure,
        timeConstantS: figure,
        delayS: figure,
        startC: figure,
        covariance: v.array(v.array(figure)),
        residualSdC: figure,
        misfitC: figure,
        verdict: v.string(),
      }),
    ),
  ),
  cure: v.optional(v.nullable(v.looseObject({ equivalentS: figure, referenceC: figure }))),
});

/** A stored run result. Fields that later rules add are kept; words that later rules add pass (the rule version tells). */
export const runResultSchema = schema as unknown as v.GenericSchema<unknown, RunResult>;
