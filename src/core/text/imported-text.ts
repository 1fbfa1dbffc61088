import type { RecordingSoundness } from '../recording/RecordingEntry.ts';
import type { RunResult } from '../run/RunResult.ts';
import { neutralise } from './neutralise.ts';
import { runReasonText } from './run-reasons.ts';
import { numberText, type TemperatureUnit, temperatureText } from './units-text.ts';

export type ImportedSummary =
  | {
      readonly path: string;
      readonly recordingId: string;
      readonly simulated: boolean;
      /** Null where no probe lies on a bond line. */
      readonly trial: {
        readonly trialId: string;
        readonly assemblyName: string;
        readonly pressName: string;
        readonly isNew: boolean;
      } | null;
      readonly recognised: string | null;
      readonly soundness: RecordingSoundness;
      readonly targetC: number | null;
      readonly holdS: number | null;
      readonly results: readonly RunResult[];
    }
  | {
      readonly path: string;
      readonly alreadyThere: {
        readonly recordingId: string;
        readonly trialId: string | null;
        readonly importedAt: string | null;
      };
    };

type Added = Exclude<ImportedSummary, { readonly alreadyThere: unknown }>;

/** What became of one file that was brought in. */
export function importedLines(file: ImportedSummary, unit: TemperatureUnit): readonly string[] {
  const name = neutralise(file.path);
  if ('alreadyThere' in file) {
    const { recordingId, trialId, importedAt } = file.alreadyThere;
    const where = trialId === null ? '' : ` in trial ${neutralise(trialId)}`;
    const when = importedAt === null ? '' : `, brought in ${importedAt}`;
    return [
      `${name}: already in the store as recording ${neutralise(recordingId)}${where}${when}. Nothing added.`,
    ];
  }
  const mark = file.simulated ? ' — SIMULATED' : '';
  const lines = [`${name}: ${whereTo(file, unit)}${mark}.`];
  if (file.recognised !== null) lines.push(`  read as: ${neutralise(file.recognised)}`);
  if (file.soundness.kind === 'not-closed')
    lines.push('  the recording was not closed; what is whole in it was added');
  return [...lines, ...file.results.map((result) => runLine(result, unit))];
}

function whereTo(file: Added, unit: TemperatureUnit): string {
  const { trial, targetC, holdS } = file;
  if (trial === null)
    return `added as recording ${neutralise(file.recordingId)}, in no trial: no probe lies on a bond line`;
  const rules =
    targetC === null || holdS === null
      ? ''
      : `, target ${temperatureText(targetC, unit)}, hold ${numberText(holdS, 0)} s`;
  return `added to ${trial.isNew ? 'new ' : ''}trial ${neutralise(trial.trialId)} (${neutralise(trial.assemblyName)} on ${neutralise(trial.pressName)}${rules})`;
}

function runLine(result: RunResult, unit: TemperatureUnit): string {
  const soak = result.soakTimeS === null ? 'no soak time' : `soak time ${numberText(result.soakTimeS, 1)} s`;
  const [reason] = result.reasons.filter((one) => one.severity !== 'note');
  const why = reason === undefined ? '' : `: ${runReasonText(reason, { unit })}`;
  return `  run ${result.runNumber}: ${soak}, ${result.verdict}${why}`;
}
