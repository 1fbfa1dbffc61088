import type { BondingCycle, CycleFlag, CycleResult, HoldSeen } from '../bonding/BondingCycle.ts';
import type { BondLineNow } from '../bonding/bond-line-now.ts';
import type { PlatenNow } from '../bonding/platens-now.ts';
import { neutralise } from './neutralise.ts';
import { FAULT_TEXT } from './screen-text.ts';
import {
  differenceText,
  numberText,
  pressureText,
  secondsText,
  type TemperatureUnit,
  temperatureText,
} from './units-text.ts';

export const CYCLE_RESULT: Readonly<Record<CycleResult, string>> = {
  done: 'done',
  'opened-early': 'opened early',
  'hold-not-verified': 'hold not verified',
  'platen-out-of-band': 'platen out of band',
  left: 'not watched to the end',
};

export const CYCLE_FLAG: Readonly<Record<CycleFlag, string>> = {
  'opened-early': 'opened early',
  'hold-not-verified': 'hold not verified',
  'platen-out-of-band': 'platen out of band at closing',
  'outside-recipe-band': 'bond line outside the recipe’s band',
  'peak-above-limit': 'peak above the highest allowed',
  'closed-too-soon': 'closed before the least recovery was over',
  left: 'program left before the opening was seen',
  'program-stopped': 'the program stopped before the opening was seen',
};

export const HOLD_SEEN: Readonly<Record<HoldSeen, string>> = {
  verified: 'hold verified',
  'not-verified': 'hold not verified',
  'not-measured': 'hold not measured (no probe)',
};

/** Words of the production timer. It states what is; it never commands a press. */
export const BONDING_TEXT = {
  title: (assembly: string, press: string, version: number) =>
    neutralise(`Bonding ${assembly} on ${press}, recipe version ${version}`),
  chooseTitle: 'Bonding with a recipe',
  choose: 'Which recipe? Its key, Enter, or scan the assembly.',
  opening: 'Making the recipe ready …',
  simulated: 'SIMULATED',
  simulatedRecipe: 'SIMULATED RECIPE',
  read: 'Before heat and before closing',
  state: {
    choose: 'RECIPE',
    opening: 'WAIT',
    // Beside the bond line's figure.
    'in-band': 'IN BAND',
    below: 'BELOW',
    above: 'ABOVE',
    heating: 'HEATING',
    'at-target': 'REACHED',
    'bond-line': 'BOND LINE',
    'no-reading': 'NO READING',
    fault: 'FAULT',
    probe: 'PROBE',
    lost: 'LOST',
    reader: 'READER',
    // What the hand does next.
    'next-closing': 'C AT CLOSING',
    'next-opening': 'O AT OPENING',
    read: 'READ THIS',
    ready: 'READY',
    'platens-cold': 'PLATEN OUT',
    'platens-unknown': 'PLATENS?',
    'no-timer-reader': 'TIMER',
    dwell: 'DWELL',
    'dwell-done': 'DWELL DONE',
    opened: 'OPENED',
    early: 'OPENED EARLY',
    verified: 'HOLD VERIFIED',
    'not-verified': 'HOLD NOT VERIFIED',
  },
  toGo: 'to the end of the dwell',
  over: 'longer than the dwell',
  set: 'dwell from press closed',
  held: 'press closed to opened',
  old: (ageS: number) => (ageS < 1000 ? `OLD ${ageS.toFixed(0)} S` : 'OLD'),
  targetCaption: (targetC: number, unit: TemperatureUnit) =>
    `bond line, target ${temperatureText(targetC, unit)}`,
  bandCaption: (low: number, high: number, unit: TemperatureUnit) =>
    `bond line, band ${bandText(low, high, unit)}`,
  oldCaption: (ageS: number) => `bond line as it was ${secondsText(ageS, 0)} ago`,
  lostCaption: 'bond line: the reader is not there',
  noReadingCaption: 'bond line: no reading yet',
  faultCaption: (fault: string) => `bond line: ${faultWords(fault).split(':')[0] ?? ''}`,
  closedAlready: (elapsedS: number, by: 'key' | 'contact') =>
    by === 'contact'
      ? `Contact again at ${secondsText(elapsedS, 0)}: the time goes on from press closed. O marks the opening.`
      : `Closed already for ${secondsText(elapsedS, 0)}: the time goes on. O marks the opening, U takes the closing back.`,
  closedAnew: (heldS: number, dwellS: number) =>
    `Opened after ${secondsText(heldS, 1)} of ${secondsText(dwellS, 0)}: logged as opened early. A new closing counts from now.`,
  pedal:
    'The contact let go at once: taken for a pedal. The time goes on; O, or the pedal after the hold, marks the opening.',
  closed: (elapsedS: number, dwellS: number) =>
    `Closed for ${secondsText(Math.floor(elapsedS), 0)} of ${secondsText(dwellS, 0)}.`,
  bondLine: (now: BondLineNow, unit: TemperatureUnit): string => {
    switch (now.kind) {
      case 'no-probe':
        return 'Bond line not measured: the time alone is watched.';
      case 'no-reading':
        return now.lost ? 'Bond line: READER LOST. The timer goes on.' : 'Bond line: no reading yet.';
      case 'stale':
        return `Bond line: OLD READING, ${secondsText(now.ageS, 0)} old${now.temperatureC === null ? '' : `, was ${temperatureText(now.temperatureC, unit)}`}.`;
      case 'fault':
        return `Bond line: PROBE FAULT, ${faultWords(now.fault)}.`;
      case 'known':
        return `Bond line ${temperatureText(now.temperatureC, unit)}`;
    }
  },
  noBand: 'The recipe’s own runs are not in this store: no band to hold the bond line against',
  hold: (counted: number, wanted: number) =>
    `Hold at target: ${secondsText(Math.min(counted, wanted), 0)} of ${secondsText(wanted, 0)} counted.`,
  holdSeen: 'Hold met and seen whole.',
  holdUnseen: 'Not verified: readings missing.',
  platen: (
    { side, temperatureC, setPointC, inside, readingInside }: PlatenNow,
    bandC: number,
    unit: TemperatureUnit,
  ): string => {
    const name = side === 'upper' ? 'Upper platen' : 'Lower platen';
    if (temperatureC === null) return `${name}: no reading`;
    const shown = `${name} ${temperatureText(temperatureC, unit)}`;
    if (setPointC === null) return `${shown}, set point not known`;
    const beyond = temperatureC < setPointC ? 'below' : 'above';
    const word = readingInside
      ? inside
        ? 'inside'
        : 'just back in'
      : inside
        ? `just ${beyond}`
        : beyond.toUpperCase();
    return `${shown}, ${word} ${temperatureText(setPointC, unit)} ±${differenceText(bandC, unit)}`;
  },
  noPlatens: (setPoint: { readonly upper: number; readonly lower: number } | null, unit: TemperatureUnit) =>
    setPoint === null
      ? 'Platens not measured, set point not known.'
      : `Platens not measured: see that the controllers show ${temperatureText(setPoint.upper, unit)}${setPoint.lower === setPoint.upper ? '' : ` upper, ${temperatureText(setPoint.lower, unit)} lower`}.`,
  gauge: (psi: number | null) =>
    psi === null
      ? 'Gauge pressure: not in the recipe; follow the shop’s instruction.'
      : `Gauge pressure ${pressureText(psi, 1)}: see that the gauge shows it.`,
  tooSoon: (leftS: number) => `Least recovery of the platens: ${secondsText(leftS, 0)} to go.`,
  opened: (leftS: number) =>
    `Logged in ${secondsText(Math.max(0, leftS), 0)}; until then U takes the opening back.`,
  logged: (cycle: BondingCycle) => `Logged: ${cycleWords(cycle)}.`,
  together: 'Several keys at once: none counts.',
  readFirst: 'Read the cautions first, then Enter.',
  scanIgnored: 'A scan chooses a recipe only before the first cycle: not taken.',
  scanUnknown: (text: string) => `No recipe for the scanned "${neutralise(text, { longest: 30 })}".`,
  scanSeveral: 'That assembly has recipes on several presses: choose one.',
  leave: 'A cycle is under way. Leave? It is logged as "not watched to the end". Y: leave, Esc: stay.',
  cycles: (count: number) => `Cycles logged since the start: ${count}`,
  none: 'No cycle logged yet.',
  help: [
    'The program advises. It is no safety device and commands no press.',
    'C or Space  press closed: the time starts. A closing contact at the reader, or a pedal on it, does it by itself.',
    'While the time runs another C or contact changes nothing; it is told. A contact within 5 s after C is the same closing. A pedal once more after the hold is done marks the opening.',
    'O  press opened: the cycle is logged with its result five seconds later.',
    'U  takes back the latest mark. The same key again within 1 s is ignored.',
    'With a probe at the bond line: its temperature is held against the recipe’s own runs, and the hold is counted at target. Without one: the time alone.',
    'Results: done; opened early; hold not verified; platen out of band; not watched to the end. The gravest counts, all are kept.',
    'A platen is out of band at closing where it has been further from its set point than ±5 °F (2.8 °C, unless another band was stated) for more than 3 s together, and inside again after more than 3 s inside; its first reading counts at once. The bond line is out of the recipe’s band after more than 2 s together (common practice, no source).',
    'A reading older than five of the reader’s own intervals, at least 1 s, is old: greyed, with its age.',
  ],
  keys: {
    closed: { key: 'C', does: 'press closed' },
    opened: { key: 'O', does: 'press opened' },
    undo: { key: 'U', does: 'undo mark' },
    unit: { key: 'F', does: '°F/°C' },
    help: { key: 'H', does: 'help' },
    quit: { key: 'Q', does: 'quit' },
    yes: { key: 'Y', does: 'leave' },
    stay: { key: 'Esc', does: 'stay' },
    back: { key: 'Esc', does: 'back' },
    read: { key: 'Enter', does: 'read and understood' },
    choose: { key: '↑ ↓', does: 'choose' },
    take: { key: 'Enter', does: 'take' },
  },
  noCycles: 'No cycle logged yet. Time one: dwellwright bond --assembly WB-212 --press North --no-reader',
  plainReady: (assembly: string, press: string, dwellS: number) =>
    neutralise(`Ready: ${assembly} on ${press}, dwell ${secondsText(dwellS)}.`),
  plainClosed: 'Press closed.',
  plainDone: 'Dwell done.',
  plainOpened: 'Press opened.',
  /** Closings that an earlier program did not finish. */
  unfinishedLogged: (cycles: readonly BondingCycle[]) =>
    neutralise(
      cycles.length === 1 && cycles[0] !== undefined
        ? `The program had stopped in a closing of ${cycles[0].assemblyName} on ${cycles[0].pressName}. Logged: ${cycleWords(cycles[0])}.`
        : `The program had stopped in ${cycles.length} closings; they are logged: ${cycles.map((cycle) => `${cycle.assemblyName} on ${cycle.pressName}, ${CYCLE_RESULT[cycle.result]}`).join('; ')}.`,
      { longest: 400 },
    ),
} as const;

/** A logged cycle in a few words: "done, closed 174 s of 174 s, hold verified". */
export function cycleWords(cycle: BondingCycle): string {
  const further = cycle.flags.filter((flag) => flag !== cycle.result).map((flag) => CYCLE_FLAG[flag]);
  const hold =
    cycle.result === 'hold-not-verified' || further.includes(CYCLE_FLAG['hold-not-verified'])
      ? []
      : [HOLD_SEEN[cycle.hold]];
  return [
    CYCLE_RESULT[cycle.result].toUpperCase(),
    `${cycle.result === 'left' ? 'watched for' : 'closed'} ${numberText(cycle.dwellHeldS, 1)} s of ${secondsText(cycle.dwellWantedS)}`,
    ...hold,
    ...further,
  ].join(', ');
}

/** A logged cycle as a line of a list. */
export function cycleLine(cycle: BondingCycle, unit: TemperatureUnit): string {
  const peak = cycle.peakC === null ? '' : `, peak ${temperatureText(cycle.peakC, unit)}`;
  return neutralise(
    `${cycle.closedAt}  ${cycle.assemblyName} on ${cycle.pressName}, recipe ${cycle.recipeVersion}: ${cycleWords(cycle)}${peak}${cycle.simulated ? '. SIMULATED' : ''}`,
    { longest: 400 },
  );
}

function bandText(lowC: number, highC: number, unit: TemperatureUnit): string {
  const show = (c: number) => (unit === 'F' ? c * 1.8 + 32 : c);
  return `${numberText(show(lowC), 0)} to ${numberText(show(highC), 0)} °${unit}`;
}

const faultWords = (fault: string): string =>
  (FAULT_TEXT as Readonly<Record<string, string>>)[fault] ?? neutralise(fault);
