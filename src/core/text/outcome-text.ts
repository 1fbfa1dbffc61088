import type { ReferenceSoak } from '../conditions/ReferenceSoak.ts';
import type { TrialOutcome } from '../result/trial-outcome.ts';
import type { RunResult } from '../run/RunResult.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import { budgetLines, budgetSentence, commonPartSentence, notStatedLines } from './budget-text.ts';
import { cautionLines } from './cautions.ts';
import { cureText } from './cure-text.ts';
import { dwellLine, dwellSentences, timerSentence } from './dwell-text.ts';
import { fitText, referenceSoakText, referenceText, sensitivityText } from './fit-text.ts';
import { neutralise } from './neutralise.ts';
import { runReasonText } from './run-reasons.ts';
import { LEFT_OUT_WHY, oddRunText, trialLines } from './trial-text.ts';
import { numberText, secondsText, slopeText, type TemperatureUnit, temperatureText } from './units-text.ts';

/** A trial's outcome in plain lines: runs with reasons, figures, the two dwell lines of equal weight. */
export function outcomeLines(
  outcome: TrialOutcome,
  unit: TemperatureUnit,
  { explain = false }: { readonly explain?: boolean } = {},
): readonly string[] {
  const { settings, statistics } = outcome;
  const input = { statistics, ...settings };
  const timer =
    outcome.chosen.dwell === null
      ? null
      : timerSentence(outcome.chosen.dwell, {
          startsAt: settings.timerStartsAt,
          offsetS: settings.timerOffsetS,
        });
  return [
    ...outcome.runs.flatMap((run, index) => runLines(run, index, outcome, unit, explain)),
    '',
    `Target ${temperatureText(settings.targetC, unit)}, hold ${secondsText(settings.holdS)}${settings.marginS > 0 ? `, margin ${secondsText(settings.marginS)}` : ''}.`,
    ...trialLines(statistics),
    ...(outcome.onsetDelayS === null
      ? []
      : [
          `Soak times from the onset count with ${secondsText(outcome.onsetDelayS, 2)} added, the delay seen in the marked runs.`,
        ]),
    ...(outcome.oddRun === null ? [] : [oddRunText(outcome.oddRun, unit)]),
    ...(explain ? referenceLines(outcome, unit) : []),
    ...uncertaintyLines(outcome, explain),
    '',
    'Dwell from press closed:',
    ...dwellSentences(input).map((line) => `  ${line}`),
    ...(statistics.runs > 1
      ? [`  ${dwellLine(input, 'slowest')}`, `  ${dwellLine(input, 'tolerance')}`]
      : []),
    ...(outcome.budget === null ? [] : [`  ${commonPartSentence(outcome.budget)}`]),
    ...(timer === null ? [] : [timer]),
    ...cautionLines('not-a-safety-device'),
  ];
}

function runLines(
  run: TrialRun,
  index: number,
  outcome: TrialOutcome,
  unit: TemperatureUnit,
  explain: boolean,
): readonly string[] {
  const { result, decision } = run;
  const soak =
    result.soakTimeS === null
      ? 'no soak time'
      : `soak ${numberText(result.soakTimeS, 2)} s ± ${numberText(result.soakTimeStandardUncertaintyS, 2)} s (standard)`;
  const closed = result.pressClosed === null ? '' : `, closed by ${result.pressClosed.by}`;
  const start = result.startC === null ? '' : `, start ${temperatureText(result.startC, unit)}`;
  const slope = result.crossing === null ? '' : `, ${slopeText(result.crossing.slopeCPerS, unit)} at target`;
  const why = outcome.leftOut[index] ?? null;
  return [
    `Run ${index + 1}: ${result.verdict.toUpperCase()}  ${soak}${closed}${start}${slope}   [${neutralise(run.source)}]`,
    ...figureLines(result, outcome.reference.soaks[index] ?? null, unit, explain),
    ...result.reasons.map(
      (reason) => `    ${reason.severity === 'note' ? 'note' : 'why'}: ${runReasonText(reason, { unit })}`,
    ),
    ...result.notes.map((note) => `    note: ${neutralise(note)}`),
    ...(why === null ? [] : [`    left out: ${LEFT_OUT_WHY[why]}`]),
    ...(decision.kind === 'automatic'
      ? []
      : [
          `    ${decision.kind === 'set-aside' ? 'set aside' : 'taken in'} because: ${neutralise(decision.reason)}`,
        ]),
  ];
}

/** A smaller shift to reference conditions is shown only when asked to explain, s. */
const LEAST_SHIFT_S = 0.1;

/** Soak time at reference conditions and cure; curve and hold when asked to explain. */
function figureLines(
  { fit, cure, hold, peakC, lowestAfterCrossingC }: RunResult,
  soak: ReferenceSoak | null,
  unit: TemperatureUnit,
  explain: boolean,
): readonly string[] {
  const shown = soak !== null && (explain || Math.abs(soak.shiftS) >= LEAST_SHIFT_S);
  const held =
    hold === null
      ? ''
      : `    at or above target ${secondsText(hold.totalAboveS)}, longest unbroken ${secondsText(hold.longestUnbrokenS)}`;
  const ends = [
    lowestAfterCrossingC === null
      ? ''
      : `, lowest after crossing ${temperatureText(lowestAfterCrossingC, unit)}`,
    peakC === null ? '' : `, peak ${temperatureText(peakC, unit)}`,
  ];
  return [
    ...(shown ? [`    ${referenceSoakText(soak)}`] : []),
    ...(explain && fit != null ? [`    ${fitText(fit, unit)}`] : []),
    ...(explain && held !== '' ? [`${held}${ends.join('')}`] : []),
    ...(cure == null ? [] : [`    ${cureText(cure, unit)}`]),
  ];
}

function referenceLines({ reference }: TrialOutcome, unit: TemperatureUnit): readonly string[] {
  const sentence = referenceText(reference.reference, unit);
  const soaks = reference.soaks.find((soak) => soak !== null);
  if (sentence === '' || soaks == null) return [];
  return [
    `${sentence} A hotter start changes the soak time by ${sensitivityText(soaks.perStartC, unit)}, hotter platens by ${sensitivityText(soaks.perPlatenC, unit)}.`,
  ];
}

/** One sentence for the technician; the whole budget when asked to explain. */
function uncertaintyLines({ budget, settings }: TrialOutcome, explain: boolean): readonly string[] {
  if (budget === null) return [];
  const sentence = `${budgetSentence(budget)}.`;
  const first = sentence.charAt(0).toUpperCase() + sentence.slice(1);
  return explain
    ? [
        first,
        'Where the doubt comes from, largest first:',
        ...budgetLines(budget).map((line) => `  ${line}`),
        ...notStatedLines(budget, settings.commonParts),
      ]
    : [first];
}
