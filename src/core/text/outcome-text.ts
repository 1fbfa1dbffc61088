import type { TrialOutcome } from '../result/trial-outcome.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import { cautionLines } from './cautions.ts';
import { dwellLine, dwellSentences, timerSentence } from './dwell-text.ts';
import { neutralise } from './neutralise.ts';
import { runReasonText } from './run-reasons.ts';
import { LEFT_OUT_WHY, trialLines } from './trial-text.ts';
import { numberText, secondsText, slopeText, type TemperatureUnit, temperatureText } from './units-text.ts';

/** A trial's outcome in plain lines: runs with reasons, figures, the two dwell lines of equal weight. */
export function outcomeLines(outcome: TrialOutcome, unit: TemperatureUnit): readonly string[] {
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
    '',
    'Dwell from press closed:',
    ...dwellSentences(input).map((line) => `  ${line}`),
    ...(statistics.runs > 1 ? [`  ${dwellLine(input, 'slowest')}`] : []),
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
