import { middleOfBand, netFacingBand } from '../../core/press/net-facing-band.ts';
import type { Assembly, Press } from '../../core/press/Press.ts';
import type { PressureResult } from '../../core/press/PressureResult.ts';
import { pressure } from '../../core/press/pressure.ts';
import { parsePressure } from '../../core/units/parse-pressure.ts';

/**
 * Net facing pressure for the gauge pressure that was set; without it, the gauge for the wanted band (worked out
 * for its middle). Null where ring or ram are not known.
 */
export function statedPressure({
  assembly,
  press,
  gauge,
}: {
  readonly assembly: Assembly | null;
  readonly press: Press | null;
  readonly gauge: string | undefined;
}): {
  readonly pressure: PressureResult | null;
  readonly gaugeStated: boolean;
  readonly gaugePsi: number | null;
} {
  const gaugePsi = gauge === undefined ? null : parsePressure(gauge, '--gauge');
  const outer = assembly?.ringOuterDiameterMm ?? null;
  const inner = assembly?.ringInnerDiameterMm ?? null;
  const bore = press?.ramBoreMm ?? null;
  if (press === null || outer === null || inner === null || bore === null) {
    return { pressure: null, gaugeStated: gaugePsi !== null, gaugePsi };
  }
  const bandPsi = netFacingBand(assembly);
  return {
    gaugeStated: gaugePsi !== null,
    gaugePsi,
    pressure: pressure({
      ringOuterDiameterMm: outer,
      ringInnerDiameterMm: inner,
      ramBoreMm: bore,
      ramRodMm: press.ramRodMm,
      rams: press.rams,
      gaugeDivisionPsi: press.gaugeDivisionPsi,
      bandPsi,
      given: gaugePsi === null ? { netFacingPsi: middleOfBand(bandPsi) } : { gaugePsi },
    }),
  };
}
