import type { CureFacts, CureResult } from '../cure/CureFacts.ts';
import { numberText, secondsText, type TemperatureUnit, temperatureText } from './units-text.ts';

/** Equivalent time of a run in a sentence; it says what was left out and that it shortens nothing. */
export function cureText(cure: CureResult, unit: TemperatureUnit): string {
  const left = [
    cure.belowRangeS > 0.05
      ? `${secondsText(cure.belowRangeS)} below the data sheet's range not counted`
      : '',
    cure.aboveRangeS > 0.05 ? `${secondsText(cure.aboveRangeS)} above it counted at its end` : '',
    cure.missingS > 0.05 ? `${secondsText(cure.missingS)} without readings not counted` : '',
  ].filter((text) => text !== '');
  return `cure: like ${secondsText(cure.equivalentS)} at ${temperatureText(cure.referenceC, unit)} (${energy(cure)}${left.length === 0 ? '' : `; ${left.join('; ')}`}). It shortens no dwell`;
}

/** The same while the press is closed, short: "cure so far like 80 s at 350 °F (176.7 °C)". */
export function liveCureText(equivalentS: number, { referenceC }: CureFacts, unit: TemperatureUnit): string {
  return `cure so far like ${numberText(equivalentS, 0)} s at ${temperatureText(referenceC, unit)}`;
}

/** Cure figures as entered from a data sheet. */
export function cureFactsText(cure: CureFacts, unit: TemperatureUnit): string {
  return `cure ${energy(cure)}, reference ${temperatureText(cure.referenceC, unit)}, data sheet from ${temperatureText(cure.rangeC.from, unit)} to ${temperatureText(cure.rangeC.to, unit)}`;
}

function energy({ activationEnergyKjPerMol }: CureFacts): string {
  return `activation energy ${numberText(activationEnergyKjPerMol, 1)} kJ/mol`;
}
