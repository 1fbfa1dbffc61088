import type { StoreProblem, StoreVerification } from '../exchange/StoreVerification.ts';
import { neutralise } from './neutralise.ts';

/** What is wrong with a part of a store. */
export const verificationDetails = {
  altered: (expected: string, came: string): string =>
    `altered: its closing line says ${closingWords(expected)}, its contents give ${closingWords(came)}`,
  blockMissing: (expected: number, came: number): string =>
    `entries are missing: after ${expected} entries the next stored one is number ${came + 1}`,
  blockCount: (first: number, expected: number, came: number): string =>
    `entries from number ${first + 1} on: ${expected} were stored, ${came} are there`,
  brokenLine: (lineNumber: number): string => `line ${lineNumber} cannot be read`,
  headCut: 'its head is cut short',
  headDiffers: (key: string, table: string, head: string): string =>
    `its head says ${key} ${head}, the store says ${table}`,
  traceDiffers: 'the decoded trace kept beside it does not fit; it is decoded anew when it is needed',
  resultDiffers:
    'altered since it was written; work it out anew from the recording: dwellwright replay --trial ID',
  recipeDiffers: 'altered since it was written, or not what the table says of it',
  cycleDiffers: 'altered since it was written, or not what the table says of it',
  cycleWithoutRecipe: (version: number): string => `its recipe version ${version} is not there`,
  cycleWithoutRecording: (recordingId: string): string => `its recording ${recordingId} is not there`,
  referenceMissing: (parent: string): string => `refers to a row of ${parent} that is not there`,
  schemaMissing: 'is not there although this program makes it',
  schemaDiffers: 'is not as this program makes it',
  schemaStrange: 'was not made by this program',
};

function closingWords(closing: string): string {
  const match = /^end (\d+) sha256 ([0-9a-f]{8})/.exec(closing);
  return match === null
    ? `"${neutralise(closing.trim(), { longest: 40 })}"`
    : `${match[1]} entries, hash ${match[2]}…`;
}

export function problemLine({ kind, subject, detail }: StoreProblem): string {
  const what = kind === 'database' ? 'database' : `${kind.replace('-', ' ')} ${neutralise(subject)}`;
  return `${what}: ${neutralise(detail, { longest: 300 })}`;
}

/** What checking a store came to. */
export function verificationLines(found: StoreVerification): readonly string[] {
  const { recordings, sound, notClosed, problems } = found;
  const lines = [
    `${neutralise(found.path)}: ${counted(recordings, 'recording')}, ${sound} proved by hash; ${counted(found.runResults, 'run result')}; ${counted(found.recipes, 'recipe version')}; ${counted(found.cycles, 'bonding cycle')}.`,
  ];
  if (notClosed.length > 0)
    lines.push(
      `Not closed, so without a hash to prove them by (a trial under way, or one that was cut short): ${notClosed.map((id) => neutralise(id)).join(', ')}.`,
    );
  if (problems.length === 0) return [...lines, 'Nothing wrong found.'];
  return [
    ...lines,
    `${counted(problems.length, 'problem')}:`,
    ...problems.map((problem) => `  ${problemLine(problem)}`),
    'Keep this file as it is, and go on with the latest backup that is whole.',
  ];
}

export const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
