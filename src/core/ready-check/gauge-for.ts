import { middleOfBand, netFacingBand } from '../press/net-facing-band.ts';
import type { Assembly, Press } from '../press/Press.ts';
import type { PressureResult } from '../press/PressureResult.ts';
import { pressure } from '../press/pressure.ts';

/**
 * Gauge pressure of this ring on this ram for the middle of its net facing band; null where a size is not known.
 * Refuses impossible sizes as `pressure` does.
 */
export function gaugeFor(press: Press, assembly: Assembly): PressureResult | null {
  const { ramBoreMm, ramRodMm, rams, gaugeDivisionPsi } = press;
  const { ringOuterDiameterMm, ringInnerDiameterMm } = assembly;
  if (ramBoreMm === null || ringOuterDiameterMm === null || ringInnerDiameterMm === null) return null;
  const bandPsi = netFacingBand(assembly);
  return pressure({
    ringOuterDiameterMm,
    ringInnerDiameterMm,
    ramBoreMm,
    ramRodMm,
    rams,
    gaugeDivisionPsi,
    bandPsi,
    given: { netFacingPsi: middleOfBand(bandPsi) },
  });
}
