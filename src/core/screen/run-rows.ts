import type { RunResult } from '../run/RunResult.ts';
import { RUN_FACTS } from '../text/run-facts-text.ts';
import { numberText, temperatureField } from '../text/units-text.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { RunRow } from './TrialView.ts';

export const RUN_HEADINGS = ['run', 'soak', 'start', 'verdict', 'slope'] as const;

/** The trial's runs so far, one row each: number, soak time, start temperature, verdict or decision, slope. */
export function runRows(state: TrialScreenState): readonly RunRow[] {
  const selected =
    state.dialog?.kind === 'runs'
      ? state.dialog.selected
      : state.dialog?.kind === 'decision'
        ? state.dialog.run
        : -1;
  return state.standing.runs.map((run, index) => ({
    selected: index === selected,
    role: rowRole(run),
    cells: runCells(run, index, state.unit),
  }));
}

/** Number, soak time, start temperature, verdict or decision, and slope of a run. */
export function runCells(run: TrialRun, index: number, unit: 'F' | 'C'): readonly string[] {
  const { soakTimeS, startC } = run.result;
  return [
    `${index + 1}`,
    soakTimeS === null ? '—' : `${numberText(soakTimeS, 1)} s`,
    startC === null ? '—' : temperatureField(startC, unit, 0).trim(),
    verdictWord(run),
    slopeCell(run.result, unit),
  ];
}

function verdictWord(run: TrialRun): string {
  return run.decision.kind === 'automatic'
    ? run.result.verdict
    : run.decision.kind === 'set-aside'
      ? RUN_FACTS.setAside
      : RUN_FACTS.takenIn;
}

/** A run that counts stands out from one that does not. */
export function rowRole(run: TrialRun): RunRow['role'] {
  if (run.decision.kind === 'set-aside') return 'quiet';
  if (run.decision.kind === 'taken-in' || run.result.verdict === 'good') return 'plain';
  return run.result.verdict === 'suspect' ? 'caution' : 'quiet';
}

function slopeCell(result: RunResult, unit: 'F' | 'C'): string {
  if (result.crossing === null) return '—';
  const slope = result.crossing.slopeCPerS * (unit === 'F' ? 1.8 : 1);
  return `${numberText(slope, 2)} °${unit}/s`;
}
