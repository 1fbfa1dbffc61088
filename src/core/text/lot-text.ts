import type { BondingCycle, HoldSeen } from '../bonding/BondingCycle.ts';
import { CYCLE_FLAG, CYCLE_RESULT } from './bonding-text.ts';
import { neutralise } from './neutralise.ts';
import { momentText } from './report-text.ts';
import { numberText, secondsText, type TemperatureUnit } from './units-text.ts';

const HOLD: Readonly<Record<HoldSeen, string>> = {
  verified: 'seen whole',
  'not-verified': 'NOT VERIFIED',
  'not-measured': 'not measured',
};

const cyclesText = (count: number): string => `${count} ${count === 1 ? 'cycle' : 'cycles'}`;

/** Words of the report of a bonded lot and of its charts. */
export const LOT_TEXT = {
  title: 'Bonded lot',
  subtitle: (lot: string, assembly: string, press: string) =>
    `${lot}: assembly ${assembly} on press ${press}`,
  reference: (lot: string) => `Lot ${lot}`,

  heading: 'Lot',
  lot: 'Lot',
  range: (from: number, to: number) => (from === to ? String(from) : `${from} to ${to}`),
  first: 'First closing',
  last: 'Last closing',
  cycles: 'Cycles',
  cyclesOf: (count: number, numbers: string) =>
    `${count} (numbers ${numbers} of this assembly on this press)`,
  countLine: ({ all, clean }: { readonly all: number; readonly clean: number }) =>
    clean === all
      ? `${cyclesText(all)}: every one kept the dwell, and nothing was noticed.`
      : `${cyclesText(all)}: ${clean} with nothing noticed, ${all - clean} to be looked at before the parts go on.`,
  holdLine: ({
    verified,
    notVerified,
    notMeasured,
  }: Readonly<Record<'verified' | 'notVerified' | 'notMeasured', number>>) =>
    `Hold at the bond line: seen whole in ${verified}, not verified in ${notVerified}, not measured (no probe) in ${notMeasured}.`,
  withoutProbe:
    'Without a probe at the bond line the time alone is shown: that the bond line heats as in the trial rests on platens, pressure and parts being as they were there.',
  toBeLookedAt: (names: readonly string[]) => `To be looked at: ${names.join('; ')}.`,
  cycleIs: (number: number, cycle: BondingCycle) => `cycle ${number} (${flagWords(cycle)})`,

  recipeHeading: (version: number) => `Recipe, version ${version}`,
  recipeUnknown: (version: number) =>
    `Version ${version} of the recipe is not in this store: only what each cycle says of it is shown.`,

  cyclesHeading: 'Cycles',
  number: 'No.',
  closedAt: 'Press closed',
  closedAtUtc: 'Press closed, UTC',
  withoutZone: (iso: string) => momentText(neutralise(iso)).replace(/ UTC$/u, ''),
  operator: 'Operator',
  held: 'Closed, s',
  holdCounted: 'Hold, s',
  platens: (unit: TemperatureUnit) => `Platens, upper / lower, °${unit}`,
  upperLower: (upper: string, lower: string) =>
    upper === '—' && lower === '—' ? '—' : `${upper} / ${lower}`,
  lowest: (unit: TemperatureUnit) => `Lowest after target, °${unit}`,
  peak: (unit: TemperatureUnit) => `Peak, °${unit}`,
  result: 'Result, and what was noticed',
  hold: (hold: HoldSeen, counted: string | null) =>
    counted === null ? HOLD[hold] : `${counted}, ${HOLD[hold]}`,
  tableMeans: ({ dwell, hold, target }: Readonly<Record<'dwell' | 'hold' | 'target', string>>) =>
    `Closed: press closed to opened, dwell wanted ${dwell}. Hold: time counted at ${target} or above, ${hold} wanted. Platens as the press closed.`,

  noticedHeading: 'Cycles to be looked at',
  noneNoticed: 'None: every cycle kept its dwell with nothing noticed.',
  noticed: 'Noticed',
  meaning: 'What it means',
  found: 'Found, and decided',

  picturesHeading: 'Bond line against the recipe’s own runs',
  lotCaption: (band: boolean) =>
    band
      ? 'Bond line of each cycle from press closed; hatched: lowest to highest of the runs that the recipe rests on. A cycle is flagged where it lay beyond them by more than the allowed difference (10 °F, 5.6 °C, unless another was stated at the press) for more than 2 s together.'
      : 'Bond line of each cycle from press closed. The runs that the recipe rests on are not in this store: no band to hold it against.',
  oneCaption: (number: number, cycle: BondingCycle) =>
    `Cycle ${number}, closed ${momentText(neutralise(cycle.closedAt))}: ${flagWords(cycle)}.`,
  heldCaption:
    'Time from press closed to opened of each cycle, in the order they were made; open marks: something was noticed.',
  noTraces: 'No cycle of this lot has readings of the bond line: there is nothing to hold against the band.',
  furtherFlagged: (count: number) =>
    `${cyclesText(count)} more with something noticed stand in the tables only.`,

  lotChartTitle: 'Bond line of each cycle against the recipe’s own runs',
  lotChartDescription: (cycles: number, target: string, band: boolean) =>
    `${cyclesText(cycles)} over seconds from press closed, target ${target}${band ? ', with the band of the recipe’s own runs' : ''}.`,
  bandName: 'Recipe’s own runs, lowest to highest',
  cycleName: (label: string, clean: boolean) => `Cycle ${label}${clean ? '' : ' (noticed)'}`,
  furtherCycles: (count: number) => `${count} further cycles`,
  dwellMark: (dwell: string) => `dwell ${dwell}`,
  differenceTitle: 'Bond line of each cycle less the middle of the recipe’s own runs',
  differenceDescription: (cycles: number) =>
    `${cyclesText(cycles)} over seconds from press closed; zero is the middle of the recipe’s own runs.`,
  differenceAxis: (unit: TemperatureUnit) => `Difference, °${unit}`,
  differenceCaption:
    'The same cycles less the middle of the recipe’s own runs at the same time, means over 2 s: above zero the bond line was hotter than in the trial.',
  signed: (value: number) => (value < 0 ? `−${-value}` : String(value)),
  heldTitle: 'Time closed of each cycle',
  heldDescription: (cycles: number, dwell: string) =>
    `${cyclesText(cycles)} by number, dwell wanted ${dwell}.`,
  heldAxis: 'Closed, s',
  numberAxis: 'Number of the cycle',

  checksHeading: 'Checks after cooling',
  checks: [
    'Parts counted',
    'Air jet between ring and carrier',
    'Dull blade round the edge',
    'Chisel (destructive), parts and pattern',
    'Section bent over a 1 in rod (destructive)',
    'Parts held back, and why',
  ],
  checksMean:
    'Good: adhesive stays on the steel, friction material stays on the adhesive. Name failure patterns after ISO 10365. Times and temperatures prove no bond: these checks do (common practice, no source).',

  cycleRecords: 'Records of the cycles, SHA-256',
  cycleRecordsMean:
    'The hash of the records is that of the file which "dwellwright export cycles --format csv" gives, cut to its heading line and the lines of these cycles, in this order.',
  noRecordings: 'No cycle of this lot has a recording: nothing was measured.',
  moment: (iso: string) => momentText(neutralise(iso)),
} as const;

/** What was noticed in a cycle; its result where nothing was. */
export function flagWords({ result, flags }: BondingCycle): string {
  return flags.length === 0 ? CYCLE_RESULT[result] : flags.map((flag) => CYCLE_FLAG[flag]).join('; ');
}

/** What each flag means for the part, for who was not there. */
export const FLAG_MEANS: Readonly<Record<BondingCycle['flags'][number], (cycle: BondingCycle) => string>> = {
  'opened-early': ({ dwellHeldS, dwellWantedS }) =>
    `Opened ${secondsText(dwellWantedS - dwellHeldS, 1)} before the dwell was over: the hold may be short.`,
  'hold-not-verified': ({ holdCountedS, holdWantedS }) =>
    holdCountedS === null
      ? 'A probe was in, but no hold was counted: the bond line may not have reached its target.'
      : `${numberText(holdCountedS, 1)} s of ${secondsText(holdWantedS)} counted at target, or readings were missing in it.`,
  'platen-out-of-band': () => 'A platen was off its set point as the press closed: soak time shifts with it.',
  'outside-recipe-band': () => 'The bond line heated otherwise than in the runs that the recipe rests on.',
  'peak-above-limit': () =>
    'The bond line was hotter than the highest allowed: adhesive or ring may be harmed.',
  'closed-too-soon': () => 'The platens had less time to recover than the recipe asks for.',
  left: () => 'The program was left before the opening was seen: how long the press was closed is not known.',
  'program-stopped': () =>
    'The program was stopped before the opening was seen: how long the press was closed is not known.',
};
