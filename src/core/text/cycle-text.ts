import type { BondingCycle } from '../bonding/BondingCycle.ts';
import { CYCLE_FLAG, HOLD_SEEN } from './bonding-text.ts';
import { neutralise } from './neutralise.ts';
import { numberText, secondsText, type TemperatureUnit, temperatureText } from './units-text.ts';

/** One fact of a cycle as a line: its name, and what is so. */
export interface CycleFact {
  readonly name: string;
  readonly text: string;
  readonly caution: boolean;
}

const AGAINST_BAND = {
  inside: 'inside the band of the recipe’s own runs while it was seen',
  outside: 'outside the band of the recipe’s own runs for more than 2 s together',
  'not-compared': 'not held against a band',
} as const;

/** Everything that is known of a logged cycle. */
export function cycleFacts(cycle: BondingCycle, when: string, unit: TemperatureUnit): readonly CycleFact[] {
  const show = (temperatureC: number) => temperatureText(temperatureC, unit);
  const { upper, lower } = cycle.platensAtClosingC;
  const left = cycle.result === 'left';
  const flagged = (...flags: readonly BondingCycle['flags'][number][]) =>
    flags.some((flag) => cycle.flags.includes(flag));
  const fact = (name: string, text: string, caution = false): CycleFact => ({
    name,
    text: neutralise(text, { longest: 300 }),
    caution,
  });
  const band = cycle.againstBand === undefined ? null : AGAINST_BAND[cycle.againstBand];
  const bondLine = [
    cycle.peakC === null ? null : `peak ${show(cycle.peakC)}`,
    cycle.lowestC === null ? null : `lowest after the crossing ${show(cycle.lowestC)}`,
    cycle.hold === 'not-measured' ? 'not measured: no probe' : band,
  ].filter((one) => one !== null);
  const platens = [
    ...(upper === null ? [] : [`upper ${show(upper)}`]),
    ...(lower === null ? [] : [`lower ${show(lower)}`]),
  ];
  const counted = cycle.holdCountedS === null ? '' : `${numberText(cycle.holdCountedS, 1)} s counted, `;
  return [
    fact('Recipe', `${cycle.assemblyName} on ${cycle.pressName}, version ${cycle.recipeVersion}`),
    fact(
      'Press closed',
      `${when}, marked by ${cycle.closedBy === 'contact' ? 'the contact' : 'key'}`,
      flagged('closed-too-soon'),
    ),
    fact(
      'Dwell',
      `${left ? 'watched for' : 'closed'} ${numberText(cycle.dwellHeldS, 1)} s of ${secondsText(cycle.dwellWantedS)}`,
      flagged('opened-early', 'left', 'program-stopped'),
    ),
    fact(
      'Hold',
      `${HOLD_SEEN[cycle.hold]}; ${counted}${secondsText(cycle.holdWantedS)} wanted at ${show(cycle.targetC)}`,
      flagged('hold-not-verified'),
    ),
    fact('Bond line', bondLine.join('; '), flagged('outside-recipe-band', 'peak-above-limit')),
    fact(
      'Platens',
      platens.length === 0 ? 'not measured at closing' : `${platens.join(', ')} at closing`,
      flagged('platen-out-of-band'),
    ),
    fact(
      'Noticed',
      cycle.flags.length === 0 ? 'nothing' : cycle.flags.map((flag) => CYCLE_FLAG[flag] ?? flag).join('; '),
      cycle.flags.length > 0,
    ),
    ...(cycle.initials === null ? [] : [fact('Initials', cycle.initials)]),
    fact('Recording', cycle.recordingId ?? 'none: timed without a reader'),
    ...(cycle.simulated ? [fact('Readings', 'SIMULATED, or by a simulated recipe')] : []),
  ];
}
