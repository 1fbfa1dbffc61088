import type { PressureResult } from '../press/PressureResult.ts';
import { cautionLines } from './cautions.ts';
import { areaText, numberText, pressureText } from './units-text.ts';

const SIDE = { below: 'below the band', inside: 'inside the band', above: 'above the band' } as const;

/**
 * The result of the pressure question in plain lines. `wanted` says which way round it was asked.
 * The band is common practice with no published source, and the text says so while it is the default.
 */
export function pressureLines(
  result: PressureResult,
  {
    bandIsDefault = true,
    wanted = false,
  }: { readonly bandIsDefault?: boolean; readonly wanted?: boolean } = {},
): readonly string[] {
  const band = `${numberText(result.bandLowPsi, 0)} to ${numberText(result.bandHighPsi, 0)} psi`;
  const gauge = `gauge ${pressureText(result.gaugePsi, 1)}`;
  const net = `net facing pressure ${pressureText(result.netFacingPsi, 1)}`;
  return [
    `Ring area ${areaText(result.ringAreaMm2)}, ram area ${areaText(result.ramAreaMm2)}.`,
    wanted ? `For ${net}: ${gauge}.` : `At ${gauge}: ${net}.`,
    `That is ${SIDE[result.side]} of ${band}${bandIsDefault ? ' (common practice, no source)' : ''}.`,
    `On the gauge the band runs from ${pressureText(result.bandLowGaugePsi, 1)} to ${pressureText(result.bandHighGaugePsi, 1)}.`,
    ...divisionLines(result),
    ...cautionLines('closing', 'not-a-safety-device').map((line) => `Caution: ${line}`),
  ];
}

function divisionLines(result: PressureResult): readonly string[] {
  const { gaugeDivisionPsi, netFacingPerDivisionPsi, netFacingLowPsi, netFacingHighPsi } = result;
  if (gaugeDivisionPsi === null || netFacingPerDivisionPsi === null) {
    return ['Give the gauge division to see what reading it one division wrong does.'];
  }
  const spread = `One gauge division (${numberText(gaugeDivisionPsi, 1)} psi) read wrong moves it by ${numberText(netFacingPerDivisionPsi, 1)} psi: ${numberText(netFacingLowPsi, 0)} to ${numberText(netFacingHighPsi, 0)} psi net`;
  return [
    `${spread}${result.divisionMayLeaveBand ? ', which may leave the band' : ', still inside the band'}.`,
  ];
}
