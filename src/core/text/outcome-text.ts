import type { TrialOutcome } from '../result/trial-outcome.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import { budgetLines, budgetSentence, commonPartSentence } from './budget-text.ts';
import { cautionLines } from './cautions.ts';
import { dwellLine, dwellSentences, timerSentence } from './dwell-text.ts';
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
    ...outcome.runs.flatMap((run, index) => runLines(run, index, outcome, unit)),
    '',
    `Target ${temperatureText(settings.targetC, unit)}, hold ${secondsText(settings.holdS)}${settings.marginS > 0 ? `, margin ${secondsText(settings.marginS)}` : ''}.`,
    ...trialLines(statistics),
    ...(outcome.onsetDelayS === null
      ? []
      : [
          `Soak times from the onset count with ${secondsText(outcome.onsetDelayS, 2)} added, the delay seen in the marked runs.`,
        ]),
    ...(outcome.oddRun === null ? [] : [oddRunText(outcome.oddRun, unit)]),
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

/** One sentence for the technician; the whole budget when asked to explain. */
function uncertaintyLines({ budget }: TrialOutcome, explain: boolean): readonly string[] {
  if (budget === null) return [];
  const sentence = `${budgetSentence(budget)}.`;
  const first = sentence.charAt(0).toUpperCase() + sentence.slice(1);
  return explain
    ? [first, 'Where the doubt comes from, largest first:', ...budgetLines(budget).map((line) => `  ${line}`)]
    : [first];
}
