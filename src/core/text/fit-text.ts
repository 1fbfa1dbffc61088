import type { ReferenceConditions, ReferenceSoak } from '../conditions/ReferenceSoak.ts';
import type { ReProof } from '../conditions/to-be-re-proved.ts';
import type { RunFit } from '../heating-fit/run-fit.ts';
import {
  differenceText,
  numberText,
  secondsText,
  type TemperatureUnit,
  temperatureText,
} from './units-text.ts';

/** A run's heating curve in one line, its residual test in words. */
export function fitText(fit: RunFit, unit: TemperatureUnit): string {
  const sd = (at: number) => Math.sqrt(Math.max(0, fit.covariance[at]?.[at] ?? 0));
  const curve = `time constant ${pair(fit.timeConstantS, sd(1))} s, delay ${pair(fit.delayS, sd(2))} s, levels out at ${temperatureText(fit.plateauC, unit)} ± ${differenceText(sd(0), unit)}`;
  return `curve: ${curve} (standard); ${VERDICT[fit.verdict]}, what is left over ${differenceText(fit.residualSdC, unit)}`;
}

const VERDICT: Readonly<Record<RunFit['verdict'], string>> = {
  fits: 'it fits',
  'wrong-model': 'IT DOES NOT FIT: what is left over is no noise, so take figures from the curve as rough',
  'too-few-readings': 'too few readings to judge it',
};

/** A run's soak time at the trial's reference conditions: beside the measured one. */
export function referenceSoakText(soak: ReferenceSoak): string {
  const parts = [part('start', soak.byStartS), part('platens', soak.byPlatenS)].filter((text) => text !== '');
  const by = parts.length === 0 ? '' : ` (${parts.join(', ')})`;
  const beyond = soak.beyondLimit ? `, beyond the limit of ${secondsText(soak.limitS)}` : '';
  return `at reference conditions ${numberText(soak.soakAtReferenceS, 2)} s${by}${beyond}`;
}

/** Seconds of soak time for a degree, the chosen unit first: "−0.11 s/°F (−0.19 s/°C)". */
export function sensitivityText(secondsPerC: number, unit: TemperatureUnit): string {
  const shown = (value: number) => `${value < 0 ? '−' : '+'}${numberText(Math.abs(value), 2)} s`;
  const [fahrenheit, celsius] = [`${shown(secondsPerC / 1.8)}/°F`, `${shown(secondsPerC)}/°C`];
  return unit === 'F' ? `${fahrenheit} (${celsius})` : `${celsius} (${fahrenheit})`;
}

/** What the reference conditions are; empty where there are none. */
export function referenceText({ startC, platenC }: ReferenceConditions, unit: TemperatureUnit): string {
  const parts = [
    startC === null ? '' : `start ${temperatureText(startC, unit)}`,
    platenC === null ? '' : `platens ${temperatureText(platenC, unit)}`,
  ].filter((text) => text !== '');
  return parts.length === 0 ? '' : `Reference conditions: ${parts.join(', ')}.`;
}

/** Why a recipe is to be proved anew. */
export function reProofText({ movedC, which, by, limitC }: ReProof, unit: TemperatureUnit): string {
  const what = by === 'measured' ? `${which} platen` : `set point of the ${which} platen`;
  return `TO BE RE-PROVED: the ${what} is ${differenceText(Math.abs(movedC), unit)} ${movedC > 0 ? 'hotter' : 'colder'} than in its trial, limit ${differenceText(limitC, unit)}`;
}

function part(name: string, seconds: number): string {
  if (Math.abs(seconds) < 0.005) return '';
  return `${name} ${seconds > 0 ? '+' : '−'}${numberText(Math.abs(seconds), 2)} s`;
}

function pair(value: number, sd: number): string {
  return `${numberText(value, 1)} ± ${numberText(sd, 2)}`;
}
