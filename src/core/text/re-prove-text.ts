import type { ReProveReason } from '../conditions/re-prove-reasons.ts';
import { reProofText } from './fit-text.ts';
import { neutralise } from './neutralise.ts';
import { secondsText, type TemperatureUnit, temperatureText } from './units-text.ts';

/** One reason to prove a recipe anew, in words. */
export function reProveText(reason: ReProveReason, unit: TemperatureUnit): string {
  if (reason.code === 'platens-moved') return reProofText(reason.moved, unit);
  return `TO BE RE-PROVED: ${why(reason, unit)}`;
}

/** Beside a heading; empty where no recipe asks for a new proof. */
export function reProveShort(recipes: number): string {
  return recipes === 0 ? '' : `${recipes} TO BE RE-PROVED`;
}

function why(
  reason: Exclude<ReProveReason, { readonly code: 'platens-moved' }>,
  unit: TemperatureUnit,
): string {
  switch (reason.code) {
    case 'older':
      return `accepted ${reason.ageDays} days ago, the shop proves anew after ${reason.limitDays}`;
    case 'adhesive-changed':
      return `the adhesive is ${name(reason.now)} now, it was ${name(reason.was)}`;
    case 'data-sheet-changed':
      return `the adhesive's data sheet is revision ${name(reason.now)} now, it was ${name(reason.was)}`;
    case 'target-changed':
      return `the assembly's target is ${temperatureText(reason.nowC, unit)} now, the recipe's ${temperatureText(reason.thenC, unit)}`;
    case 'hold-longer':
      return `the assembly's hold is ${secondsText(reason.nowS)} now, the recipe's ${secondsText(reason.thenS)}`;
    case 'dwell-above-highest':
      return `its dwell of ${secondsText(reason.dwellS)} is above the longest allowed now, ${secondsText(reason.highestS)}`;
    case 'later-runs':
      return reason.short > 0
        ? `${reason.short} of ${reason.runs} later runs would fall short of the hold at its dwell`
        : `${reason.outside} of ${reason.runs} later runs lie outside its band, more than chance explains`;
  }
}

const name = (text: string | null): string => neutralise(text ?? '—', { longest: 60 });
