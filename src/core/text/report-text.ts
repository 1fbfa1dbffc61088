import type { OverlayInput, OverlayRun } from '../figure/OverlayInput.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { Dwell } from '../trial/TrialResult.ts';
import type { Expanded } from '../uncertainty/UncertaintyPart.ts';
import { numberText, secondsText, type TemperatureUnit, temperatureText } from './units-text.ts';

export const ROLE_NAME: Readonly<Record<ChannelRole, string>> = {
  'bond-line': 'Bond line',
  'bond-line-inner': 'Bond line, inner edge',
  'bond-line-outer': 'Bond line, outer edge',
  'upper-platen': 'Upper platen',
  'lower-platen': 'Lower platen',
  ambient: 'Room',
  unused: 'Not used',
};

/** A moment in ISO 8601 as people read it: "2026-03-02 08:20 +01:00", or UTC. */
export function momentText(iso: string): string {
  const match = /^(\d{4}-\d\d-\d\d)T(\d\d:\d\d)[^Z+-]*(Z|[+-]\d\d:\d\d)?$/.exec(iso);
  if (match === null) return iso;
  const [, day, time, zone] = match;
  return `${day} ${time}${zone === undefined ? '' : ` ${zone === 'Z' ? 'UTC' : zone.replace('-', '−')}`}`;
}

/** Words of the charts. */
export const FIGURE_TEXT = {
  capital: (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`,
  temperature: 'Temperature',
  timeFromClosed: 'Seconds from press closed',
  timeFromFirstReading: 'Seconds from the first reading (press closed is not known)',
  simulated: 'SIMULATED',
  target: (temperature: string) => `Target ${temperature}`,
  run: ({ label, counts, soakTimeS }: OverlayRun) =>
    `Run ${label}: ${soakTimeS === null ? 'no soak time' : `${numberText(soakTimeS, 2)} s`}${counts ? '' : ' (left out)'}`,
  outside: (ends: string) => `Outside: up to ${ends}`,
  furtherRuns: (count: number) => `${count} further runs`,
  overlayTitle: 'Bond-line temperature of every run, aligned at press closed',
  overlayDescription: ({ runs, targetC, unit }: OverlayInput) =>
    `${runs.length} ${runs.length === 1 ? 'run' : 'runs'} over seconds from press closed, target ${temperatureText(targetC, unit)}. ${runs.map((run) => FIGURE_TEXT.run(run)).join('; ')}.`,
  crossingTitle: 'The same runs where they cross the target',
  runTitle: (label: string) => `Run ${label}: all channels`,
  runDescription: ({
    crossingS,
    targetC,
    unit,
  }: {
    readonly crossingS: number | null;
    readonly targetC: number;
    readonly unit: TemperatureUnit;
  }) =>
    `Temperatures of one run over time, target ${temperatureText(targetC, unit)}, ${crossingS === null ? 'no crossing' : `crossing after ${numberText(crossingS, 2)} s`}.`,
  channel: (role: ChannelRole, channel: number) => `${ROLE_NAME[role]} (channel ${channel})`,
  minutesFromPowerOn: 'Minutes from power-on',
  platenOf: (name: string, role: ChannelRole) => `${name}, ${ROLE_NAME[role].toLowerCase()}`,
  warmUpTitle: 'Platens, aligned at power-on',
  warmUpDescription: (lines: readonly string[]) =>
    `Temperature over minutes from power-on: ${lines.join('; ')}.`,
  closed: (by: string) => (by === 'onset' ? 'press closed (from the onset)' : 'press closed'),
  crossingAt: (timeS: number) => `crossing ${numberText(timeS, 2)} s`,
  holdDone: 'hold done',
  openedAt: (timeS: number) => `opened ${numberText(timeS, 1)} s`,
  dwellTitle: 'Dwell and its parts',
  dwellInWords: (name: string, { totalS, soakS, holdS, marginS }: Dwell) =>
    `${name}: ${secondsText(totalS, 3)}, of which soak ${numberText(soakS, 2)} s, hold ${secondsText(holdS)}, margin ${secondsText(marginS)}.`,
  part: (part: 'soak' | 'hold' | 'margin' | 'rounding', lengthS: number) =>
    `${part} ${numberText(lengthS, part === 'soak' || part === 'rounding' ? 2 : 1).replace(/\.0$/, '')} s`,
  seconds: (timeS: number) => secondsText(timeS, 3),
  soakTimesTitle: 'Soak time of each run, with its own standard uncertainty',
  soakTimesDescription: (runs: readonly { readonly label: string; readonly soakTimeS: number | null }[]) =>
    `${runs.map(({ label, soakTimeS }) => `run ${label} ${numberText(soakTimeS, 2)} s`).join(', ')}.`,
  mean: (timeS: number) => `mean ${numberText(timeS, 2)} s (95 % interval shaded)`,
  nextRunBound: (timeS: number) => `next run below ${numberText(timeS, 2)} s (95 %)`,
  soakAxis: 'Soak time, s',
  runName: (label: string, counts: boolean) => `Run ${label}${counts ? '' : ' (out)'}`,
} as const;

/** A recipe's own facts in a report. */
export const RECIPE_FACTS = {
  version: 'Recipe version',
  versionOf: (version: number, provisional: boolean) =>
    `${version}${provisional ? ', PROVISIONAL: it rests on one run' : ''}`,
  accepted: 'Accepted',
  acceptedBy: (initials: string, at: string) => `by ${initials} on ${at}`,
  dwell: 'Dwell and its parts',
  dwellOf: ({ dwell, soak, hold, margin }: Readonly<Record<'dwell' | 'soak' | 'hold' | 'margin', string>>) =>
    `${dwell} from press closed: soak ${soak} s + hold ${hold} s + margin ${margin} s, rounded up`,
  rule: 'Dwell rule',
  ruleOf: (rule: string, reason: string | null) => `${rule}${reason === null ? '' : ` (${reason})`}`,
  platensMeasured: 'Platens measured in its trial',
  restsOn: 'Rests on',
  runs: (count: number, mean: string, sd: string | null) =>
    `${count} ${count === 1 ? 'run' : 'runs'}, mean soak time ${mean} s${sd === null ? '' : `, standard deviation ${sd} s`}`,
} as const;

/** Headings, labels and sentences of reports. */
export const REPORT_TEXT = {
  trialTitle: 'Heat-soak trial',
  trialSubtitle: (assembly: string, press: string) => `Assembly ${assembly} on press ${press}`,
  trialReference: (trialId: string) => `Trial ${trialId}`,
  notStated: 'not stated',
  sentence: (line: string) =>
    `${line.charAt(0).toUpperCase()}${line.slice(1)}${/[.!?]$/.test(line) ? '' : '.'}`,

  simulated: 'SIMULATED',
  simulatedWhy:
    'These readings come from a simulator. They prove nothing about a press, a part or an adhesive.',
  madeBy: (program: string, madeAt: string) => `Made by ${program} on ${momentText(madeAt)}`,
  page: (page: number, pages: number) => `Page ${page} of ${pages}`,

  dwellHeading: 'Dwell',
  dwellMeans: ({
    target,
    hold,
    margin,
    timerStep,
  }: {
    readonly target: string;
    readonly hold: string;
    readonly margin: string | null;
    readonly timerStep: string;
  }) =>
    `Dwell counts from press closed: soak time to ${target} at the bond line, plus a hold of ${hold}${margin === null ? '' : `, plus a margin of ${margin}`}, rounded up to ${timerStep}. The two rules above stand side by side; which one to use is for the engineer to decide.`,
  nextRunWorth: (hold: string) => `in 95 % of cases the next run holds for ${hold} or more`,
  alsoRule: (line: string) => `For comparison, ${line}`,
  commonPart: (sentence: string) => `In none of these dwells: ${sentence}.`,
  acceptedAs: (recipe: {
    readonly version: number;
    readonly dwell: string;
    readonly rule: string;
    readonly reason: string | null;
    readonly by: string;
    readonly at: string;
    readonly provisional: boolean;
  }) =>
    `Accepted as recipe version ${recipe.version}: dwell ${recipe.dwell} by the rule "${recipe.rule}"${recipe.reason === null ? '' : ` (${recipe.reason})`}, by ${recipe.by} on ${recipe.at}${recipe.provisional ? '; provisional, resting on one run' : ''}.`,
  dwellCaption: 'Dwell and its parts by both rules.',

  jobHeading: 'Job',
  trial: 'Trial',
  made: 'Made',
  operator: 'Operator',
  assembly: 'Assembly',
  carrier: 'Carrier',
  ring: 'Ring',
  ringOf: (outer: string, inner: string) => `OD ${outer}, ID ${inner}`,
  adhesive: 'Adhesive',
  adhesiveOf: (adhesive: string | null, revision: string | null) =>
    adhesive === null ? null : `${adhesive}${revision === null ? '' : `, data sheet ${revision}`}`,
  press: 'Press',
  ram: 'Ram',
  rams: (count: number, bore: string) => `${count === 1 ? 'one ram' : `${count} rams`}, bore ${bore}`,
  target: 'Target at the bond line',
  hold: 'Hold at or above target',
  platens: 'Platen set points',
  upperLower: (upper: string, lower: string) =>
    upper === lower ? `${upper}, upper and lower` : `upper ${upper}, lower ${lower}`,
  gauge: 'Gauge pressure',
  netFacing: 'Net facing pressure',
  netFacingOf: (net: string, side: 'below' | 'inside' | 'above', spread: string | null) =>
    `${net}, ${side} the wanted band${spread === null ? '' : `; ${spread}`}`,
  gaugeSpread: (low: string, high: string) => `one gauge division read wrong: ${low} to ${high}`,
  gaugeBand: 'Gauge for the wanted band',
  bandOf: ({ low, high, netLow, netHigh }: Readonly<Record<'low' | 'high' | 'netLow' | 'netHigh', string>>) =>
    `${low} to ${high}, for ${netLow} to ${netHigh} net facing pressure`,
  highestDwell: 'Longest dwell allowed',
  highestPeak: 'Highest bond-line temperature allowed',
  note: 'Note',

  conditionsHeading: 'Conditions of each run',
  room: (temperature: string | null) =>
    temperature === null ? 'Room temperature was not stated.' : `Room temperature ${temperature}.`,
  runNote: (run: number, note: string) => `Run ${run}, note: ${note}`,
  run: 'Run',
  start: 'Start of the bond line',
  upperPlaten: 'Upper platen at closing',
  lowerPlaten: 'Lower platen at closing',
  ringState: 'Ring',
  carrierId: 'Carrier id',
  probe: 'Probe',

  runsHeading: 'Runs',
  runCure: (run: number, cure: string) => `Run ${run}, ${cure}.`,
  closedKnownBy: 'Closed by',
  closedBy: (by: string) => (by === 'onset' ? 'onset of the rise' : by),
  soak: 'Soak time, s',
  standardUncertainty: 'Standard uncertainty, s',
  slope: (unit: TemperatureUnit) => `Slope at target, °${unit}/s`,
  peak: (unit: TemperatureUnit) => `Peak, °${unit}`,
  holdCounted: 'Hold counted, s',
  holdCell: (counted: string, verified: boolean) => `${counted}${verified ? '' : ', not verified'}`,
  verdictHeading: 'Verdict',
  verdict: (verdict: string, decision: 'automatic' | 'set-aside' | 'taken-in') =>
    decision === 'automatic' ? verdict : `${verdict}, ${decision === 'set-aside' ? 'set aside' : 'taken in'}`,
  inMean: 'In the mean',
  counts: 'counts',
  leftOut: 'left out',

  figuresHeading: 'Pictures',
  overlayCaption: 'Bond-line temperature of every run, counted from press closed; each mark is a crossing.',
  crossingCaption:
    'The same runs near the target: dots are readings, lines the heating rate found at each crossing, marks the crossings.',
  soakTimesCaption:
    'Soak times with their own standard uncertainty; mean with its 95 % interval; bound for the next run (95 %, one-sided).',
  nothingToDraw: 'No run has a press closed and a trace: there is nothing to draw.',

  uncertaintyHeading: 'Uncertainty',
  noBudget: [
    'The standard uncertainty of each run in the table holds what its own crossing and closing leave open. The spread from run to run is in the interval of the mean and in the bound of the next run.',
    'Errors common to all runs (tolerance or calibration of the probe, cold junction, place of the tip, platens off their set point) were not stated and are in no figure of this report: averaging does not help against them, and a probe that reads high makes every bond short, unseen.',
  ],
  part: 'Part',
  standardS: 'Standard, s',
  shapeHeading: 'Shape',
  shape: { normal: 'normal', student: 'Student t', rectangular: 'rectangular', triangular: 'triangular' },
  degrees: 'Degrees of freedom',
  expandedS: 'Expanded, s',
  share: 'Share of variance',
  ofWhich: 'of which',
  ofWhichPart: (name: string) => `of which: ${name}`,
  budgetTotal: ({
    standardUncertaintyS,
    expandedUncertaintyS,
    probability,
    coverageFactor,
    effectiveDegreesOfFreedom,
    method,
  }: Expanded) =>
    `Together: standard ${numberText(standardUncertaintyS, 2)} s, expanded ${numberText(expandedUncertaintyS, 2)} s (${numberText(probability * 100, 0)} %, coverage factor ${numberText(coverageFactor, 2)}, ${method === 'monte-carlo' ? 'by drawing the parts, JCGM 101' : `${Number.isFinite(effectiveDegreesOfFreedom) ? numberText(effectiveDegreesOfFreedom, 1) : 'infinite'} effective degrees of freedom, JCGM 100`}).`,

  leftOutHeading: 'Runs left out, and what was noticed',
  decided: (kind: 'set-aside' | 'taken-in', reason: string) =>
    `${kind === 'set-aside' ? 'Set aside' : 'Taken in'} because: ${reason}${/[.!?]$/.test(reason) ? '' : '.'}`,
  noneLeftOut: 'Every run counts, and nothing was noticed about any of them.',
  reasons: 'Reasons',

  recheckHeading: 'Recipe held against these runs',
  inBand: 'Inside the band',
  holdAtDwell: 'Hold at its dwell, s',
  yesNo: (yes: boolean) => (yes ? 'yes' : 'no'),

  transferHeading: (press: string) => `The same assembly on press ${press}`,
  runsThatCount: 'Runs that count',
  meanSoak: 'Mean',
  standardDeviation: 'Standard deviation',
  nextRunBelow: 'Next run below (95 %)',
  comparisonTitle: 'Warm-up of two presses',
  comparisonSubtitle: (first: string, second: string) => `${second} against ${first}`,
  warmUpCaption: 'Platens from power-on, each warm-up a line: how they rise, settle and hold.',
  definitionsHeading: 'What the figures mean',
  figure: 'Figure (mean)',
  difference: 'Second less first',
  interval: '95 % interval',
  side: 'Side',
  warmUpConditionsHeading: 'Conditions of each warm-up',
  setPoints: 'Set points',
  roomHeading: 'Room',
  warmUpRules: 'Rules of warm-up analysis',
  version: (version: number) => `version ${version}`,
  notSound: 'cut short or ALTERED',

  equipmentHeading: 'Equipment and calibration',
  reader: 'Reader',
  readerOf: (name: string, serial: string, firmware: string, rateHz: string | null) =>
    `${name}, serial number ${serial}, firmware ${firmware}${rateHz === null ? '' : `, ${rateHz} samples per second`}`,
  probeLaid: 'Channel',
  probeRecord: 'Probe and its calibration',
  channelOf: (channel: number, role: string, type: string | null, resolutionC: number | null) =>
    `${channel}: ${role.toLowerCase()}${type === null ? '' : `, type ${type}`}${resolutionC === null ? '' : `, step ${numberText(resolutionC, 2)} °C`}`,
  equipmentItem: 'Stated',
  calibrationBlanks: [
    'Probe: number, calibrated on, due',
    'Reader: calibrated on, due',
    'Pressure gauge: number, calibrated on, due',
  ],
  clock: (drifts: readonly string[]) =>
    drifts.length === 0
      ? 'Clock of the reader: none to compare with the computer’s.'
      : `Clock of the reader against the computer’s, by recording: ${drifts.join('; ')}.`,
  drift: (ppm: string, standardPpm: string) => `${ppm.replace('-', '−')} ± ${standardPpm} ppm (standard)`,

  cautionsHeading: 'Cautions',

  dataHeading: 'Versions and data',
  program: 'Program',
  ruleVersion: 'Rules of run analysis',
  ruleVersions: (used: readonly number[], now: number) =>
    `version ${used.join(', ') || '—'}${used.some((version) => version !== now) ? ` (this program’s is ${now})` : ''}`,
  recording: 'Recording',
  state: 'State',
  sha256: 'SHA-256 of the file',
  soundness: {
    sound: 'whole',
    'not-closed': 'not closed',
    altered: 'ALTERED',
    broken: 'BROKEN',
  },
  howToCheckHash:
    'The hash is of the recording’s file, byte for byte; any SHA-256 program gives the same for an unchanged file.',

  wrote: (file: string) => `Wrote ${file}.`,

  signaturesHeading: 'Signatures',
  signatories: ['Made by', 'Checked by', 'Accepted by'],
  signatureLine: 'Name and signature',
  dateLine: 'Date',
} as const;
