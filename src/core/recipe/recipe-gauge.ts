import type { Assembly, Press } from '../press/Press.ts';
import { PressureError } from '../press/PressureError.ts';
import type { PressureResult } from '../press/PressureResult.ts';
import { gaugeFor } from '../ready-check/gauge-for.ts';
import type { Pressing } from './Pressing.ts';
import type { Recipe } from './Recipe.ts';

/**
 * The gauge pressure that a recipe keeps, and what it rests on. A stated or confirmed gauge stays as it is and gives the
 * net facing pressure (net = gauge · ram area ÷ ring area); without one the gauge is worked out for this ring and ram.
 * Both null where neither can be known; sizes that no press can have count as not known.
 */
export function recipeGauge({
  press,
  assembly,
  gaugePsi,
  by,
}: {
  readonly press: Press | undefined;
  readonly assembly: Assembly | undefined;
  readonly gaugePsi: number | null;
  /** How `gaugePsi` came to be known. */
  readonly by: 'confirmed' | 'stated';
}): { readonly gaugePsi: number | null; readonly pressing: Pressing | null } {
  const needed = neededGauge(press, assembly);
  if (needed === null || press?.ramBoreMm == null) return { gaugePsi, pressing: null };
  const { ringOuterDiameterMm, ringInnerDiameterMm } = assembly ?? {};
  if (ringOuterDiameterMm == null || ringInnerDiameterMm == null) return { gaugePsi, pressing: null };
  const gainPerPsi = needed.netFacingPsi / needed.gaugePsi;
  const kept = gaugePsi ?? needed.gaugePsi;
  return {
    gaugePsi: kept,
    pressing: {
      gaugeBy: gaugePsi === null ? 'worked-out' : by,
      netFacingPsi: kept * gainPerPsi,
      ringOuterDiameterMm,
      ringInnerDiameterMm,
      ramBoreMm: press.ramBoreMm,
      ramRodMm: press.ramRodMm,
      rams: press.rams,
    },
  };
}

export interface GaugeMoved {
  /** As the recipe has it, and what today's ring and ram need for the same net facing pressure. */
  readonly recipePsi: number;
  readonly todayPsi: number;
  /** What the recipe's gauge would press the ring with today. */
  readonly netFacingPsi: number;
  readonly wantedNetPsi: number;
}

/** Where the gauge's division is not known: what can be read off a gauge, psi. Common practice, no source. */
const READABLE_PSI = 2;

/**
 * Whether today's ring and ram would need another gauge pressure than the recipe's (bore or ring edited since), by more
 * than half a division of the gauge. A recipe without what its gauge rests on is held against the wanted band instead.
 * Null where it is the same, or cannot be known.
 */
export function gaugeMoved(
  recipe: Pick<Recipe, 'gaugePsi' | 'pressing'>,
  press: Press | undefined,
  assembly: Assembly | undefined,
): GaugeMoved | null {
  const needed = neededGauge(press, assembly);
  const { gaugePsi: recipePsi, pressing } = recipe;
  if (needed === null || recipePsi === null) return null;
  const gainPerPsi = needed.netFacingPsi / needed.gaugePsi;
  const netFacingPsi = recipePsi * gainPerPsi;
  const wantedNetPsi = pressing?.netFacingPsi ?? needed.netFacingPsi;
  const todayPsi = wantedNetPsi / gainPerPsi;
  const same =
    pressing == null
      ? netFacingPsi >= needed.bandLowPsi && netFacingPsi <= needed.bandHighPsi
      : Math.abs(todayPsi - recipePsi) <= (needed.gaugeDivisionPsi ?? READABLE_PSI) / 2;
  return same ? null : { recipePsi, todayPsi, netFacingPsi, wantedNetPsi };
}

/** Sizes that no press can have are told by the command `pressure`, not here. */
function neededGauge(press: Press | undefined, assembly: Assembly | undefined): PressureResult | null {
  if (press === undefined || assembly === undefined) return null;
  try {
    return gaugeFor(press, assembly);
  } catch (error) {
    if (error instanceof PressureError) return null;
    throw error;
  }
}
