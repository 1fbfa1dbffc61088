import type { RecheckReason } from '../recheck/RecheckResult.ts';
import { neutralise } from './neutralise.ts';
import { runReasonText } from './run-reasons.ts';
import { differenceText, numberText, type TemperatureUnit } from './units-text.ts';

/** One thing against a run that is held against a recipe, in words. */
export function recheckReasonText(reason: RecheckReason, unit: TemperatureUnit = 'F'): string {
  switch (reason.code) {
    case 'soak-above-band':
      return `Soak time above the band: limit ${numberText(reason.limitS, 2)} s.`;
    case 'soak-below-band':
      return `Soak time below the band: limit ${numberText(reason.limitS, 2)} s. Warm carrier or hotter platens?`;
    case 'hold-short':
      return `The recipe's dwell leaves ${numberText(reason.heldS, 1)} s of hold, ${numberText(reason.wantedS, 0)} s wanted.`;
    case 'start-differs':
      return `Start ${differenceText(Math.abs(reason.differenceC), unit)} ${way(reason.differenceC)} than in the recipe's trial, limit ${differenceText(reason.limitC, unit)}: not compared.`;
    case 'platen-differs':
      return `${reason.which === 'upper' ? 'Upper' : 'Lower'} platen ${differenceText(Math.abs(reason.differenceC), unit)} ${way(reason.differenceC)} than in the recipe's trial, limit ${differenceText(reason.limitC, unit)}: not compared; the recipe is to be re-proved for such platens.`;
    case 'other-assembly':
      return `Made with ${neutralise(reason.name)}, another assembly: not compared.`;
    case 'other-press':
      return `Made on ${neutralise(reason.name)}, another press.`;
    case 'run-not-usable':
      return [
        `The run is ${reason.verdict}: not compared.`,
        ...reason.because.map((why) => runReasonText(why, { unit })),
      ].join(' ');
    case 'set-aside':
      return `Set aside: ${neutralise(reason.reason)}. Not compared.`;
    case 'from-onset':
      return 'Timed from the onset of the rise: not compared.';
  }
}

const way = (differenceC: number): string => (differenceC > 0 ? 'hotter' : 'colder');
