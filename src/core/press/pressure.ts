import { PA_PER_PSI } from '../units/exact-factors.ts';
import type { PressureInput, PressureResult } from './PressureResult.ts';
import { requireBand, requirePressure, requireShare } from './pressure-checks.ts';
import { ramAreaMm2 } from './ram-area.ts';
import { ringAreaMm2 } from './ring-area.ts';

/** Net facing pressure wanted, psi. Common practice, no source; the user may change it. */
export const NET_FACING_BAND_PSI = Object.freeze({ low: 200, high: 250 });

/** Relative rounding error that never decides. */
const DUST = 1e-9;

/**
 * Ram gauge pressure and net facing pressure of a ring, either way round:
 * net = gauge · ram area · efficiency ÷ ring area. Areas in mm², pressures in psi.
 * Check value (common practice, no source): ring 9.875 × 8.75 in, one 6 in ram, 120 psi gauge → about 206 psi.
 */
export function pressure(input: PressureInput): PressureResult {
  const { given, bandPsi = NET_FACING_BAND_PSI, gaugeDivisionPsi = null, efficiency = 1 } = input;
  const ringMm2 = ringAreaMm2(input);
  const ramMm2 = ramAreaMm2(input);
  requireShare(efficiency);
  requireBand(bandPsi);
  const gain = (ramMm2 * efficiency) / ringMm2;
  const gaugePsi = 'gaugePsi' in given ? given.gaugePsi : given.netFacingPsi / gain;
  const netFacingPsi = 'gaugePsi' in given ? given.gaugePsi * gain : given.netFacingPsi;
  requirePressure(
    'gaugePsi' in given ? 'gaugePsi' : 'netFacingPsi',
    'gaugePsi' in given ? gaugePsi : netFacingPsi,
  );
  const side = sideOfBand(netFacingPsi, bandPsi);
  return Object.freeze({
    ringAreaMm2: ringMm2,
    ramAreaMm2: ramMm2,
    gaugePsi,
    netFacingPsi,
    insideBand: side === 'inside',
    side,
    bandLowPsi: bandPsi.low,
    bandHighPsi: bandPsi.high,
    bandLowGaugePsi: bandPsi.low / gain,
    bandHighGaugePsi: bandPsi.high / gain,
    ...effectOfDivision({ gaugeDivisionPsi, gain, netFacingPsi, bandPsi }),
    forceN: (gaugePsi * PA_PER_PSI * ramMm2 * efficiency) / 1e6,
  });
}

/** An end of the band belongs to it; unit conversion may leave a billionth of dust on either side. */
function sideOfBand(netFacingPsi: number, { low, high }: { readonly low: number; readonly high: number }) {
  if (netFacingPsi < low * (1 - DUST)) return 'below';
  return netFacingPsi > high * (1 + DUST) ? 'above' : 'inside';
}

function effectOfDivision(input: {
  readonly gaugeDivisionPsi: number | null;
  readonly gain: number;
  readonly netFacingPsi: number;
  readonly bandPsi: { readonly low: number; readonly high: number };
}) {
  const { gaugeDivisionPsi, gain, netFacingPsi, bandPsi } = input;
  if (gaugeDivisionPsi === null) {
    return {
      gaugeDivisionPsi,
      netFacingPerDivisionPsi: null,
      netFacingLowPsi: null,
      netFacingHighPsi: null,
      divisionMayLeaveBand: null,
    };
  }
  requirePressure('gaugeDivisionPsi', gaugeDivisionPsi);
  const netFacingPerDivisionPsi = gaugeDivisionPsi * gain;
  const netFacingLowPsi = netFacingPsi - netFacingPerDivisionPsi;
  const netFacingHighPsi = netFacingPsi + netFacingPerDivisionPsi;
  const divisionMayLeaveBand = [netFacingLowPsi, netFacingHighPsi].some(
    (psi) => sideOfBand(psi, bandPsi) !== 'inside',
  );
  return {
    gaugeDivisionPsi,
    netFacingPerDivisionPsi,
    netFacingLowPsi,
    netFacingHighPsi,
    divisionMayLeaveBand,
  };
}
