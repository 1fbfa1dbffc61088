import { neutralise } from './neutralise.ts';

/** Sentences about files brought in and handed out, and stores brought together. `[message, remedy]` each. */
type Refusal = readonly [message: string, remedy: string];

const shown = (text: string): string => neutralise(text);

export const exchangeRefusals = {
  altered: (file: string, expected: string, came: string): Refusal => [
    `${shown(file)} was altered after it was closed: expected ${shown(expected)}, came ${shown(came)}`,
    'Bring in the file as it was written. To look at it all the same: dwellwright replay FILE.',
  ],
  broken: (file: string, lineNumber: number, text: string): Refusal => [
    `${shown(file)}: line ${lineNumber} is no line of a recording: "${neutralise(text, { longest: 60 })}"`,
    'Bring in the file as it was written. To look at what comes before that line: dwellwright replay FILE.',
  ],
  recordingDiffers: (file: string, recordingId: string): Refusal => [
    `${shown(file)}: a recording "${shown(recordingId)}" with other contents is already in the store`,
    'Nothing was changed. Compare the two: dwellwright recordings ID --out FILE writes the stored one out.',
  ],
  optionsNotUsed: (file: string, options: readonly string[]): Refusal => [
    `${shown(file)} is a recording of our own and carries its own conditions; came ${options.join(', ')}`,
    'Bring it in without these options; they may be given to each replay of it instead.',
  ],
  trialDiffers: (file: string, trialId: string, what: string, has: string, came: string): Refusal => [
    `${shown(file)} does not fit into trial ${shown(trialId)}: its ${what} is ${shown(has)}, came ${shown(came)}`,
    'Bring the file into another trial (--trial NEW-ID), or leave the option out.',
  ],
  simulatedMixed: (file: string, trialId: string): Refusal => [
    `${shown(file)}: simulated and real readings never share a trial (trial ${shown(trialId)})`,
    'Bring the file into a trial of its own: --trial NEW-ID.',
  ],
  nameMissing: (file: string, what: 'assembly' | 'press'): Refusal => [
    `${shown(file)}: no ${what} named`,
    `Add --${what} NAME, or --trial ID of a trial that is there.`,
  ],
  trialIdUnusable: (id: string): Refusal => [
    `--trial: expected letters, digits, dots, dashes and underscores, at most 64, came "${shown(id)}"`,
    'Write for example --trial 2026-03-lot-7.',
  ],
  headingsTooLong: (file: string): Refusal => [
    `${shown(file)}: the lines above the readings are too long to keep`,
    'Take out what is no heading above the first reading, and bring the file in again.',
  ],
  lineTooLong: (file: string): Refusal => [
    `${shown(file)}: a line is too long to be kept whole`,
    'Take the line out; it is no reading of a logger.',
  ],
  layoutUnreadable: (recordingId: string): Refusal => [
    `the recording "${shown(recordingId)}" was imported, but the layout in its head cannot be read`,
    'Bring in the original file again; the store is checked by: dwellwright verify.',
  ],
  unanswered: (question: string): Refusal => [
    `the question "${question}" was not answered`,
    'Start again, or say it by option: dwellwright import --help lists them.',
  ],
  changedMeanwhile: (file: string): Refusal => [
    `${shown(file)} was changed while it was read`,
    'Wait until the logger has finished writing it, then bring it in again.',
  ],
  severalUnfit: (
    count: number,
    unfit: readonly { readonly error: { readonly message: string; readonly remedy: string | null } }[],
  ): Refusal => [
    `nothing was brought in: ${unfit.length} of ${count} files cannot be used as they stand: ${unfit
      .slice(0, 8)
      .map(
        ({ error }) => `${shown(error.message)}${error.remedy === null ? '' : ` (${shown(error.remedy)})`}`,
      )
      .join('; ')}${unfit.length > 8 ? `; and ${unfit.length - 8} more` : ''}`,
    'Put each right as told, or leave these files out and bring them in by themselves.',
  ],
  layoutUnknown: (name: string, near: string | null): Refusal => [
    `there is no layout "${shown(name)}"`,
    near === null
      ? 'Save one: dwellwright import FILE … --save-layout NAME'
      : `Did you mean "${shown(near)}"? List them: dwellwright layouts`,
  ],
  layoutNameEmpty: (): Refusal => [
    'the name of a layout came empty',
    'Write for example --save-layout "desk logger".',
  ],
  mergeSameStore: (path: string): Refusal => [
    `${path} is the store itself`,
    'Name the store file of the other laptop, or a backup of it.',
  ],
  mergeDamaged: (path: string, problems: readonly string[]): Refusal => [
    `nothing was merged: ${path} is not whole: ${problems.slice(0, 5).map(shown).join('; ')}`,
    `Look closer: dwellwright verify --store ${path}. Merge from a backup that is whole.`,
  ],
  mergeRecordingDiffers: (recordingId: string): Refusal => [
    `nothing was merged: recording "${shown(recordingId)}" is in both stores with different contents`,
    'One of the two was altered. Look at both: dwellwright recordings ID --out FILE.',
  ],
  backupExists: (path: string): Refusal => [
    `${path} is already there`,
    'Name another file, or add --replace to put the new backup in its place.',
  ],
  backupSameFile: (path: string): Refusal => [
    `${path} is the store itself`,
    'Name another file for the backup.',
  ],
  backupNotWhole: (problems: readonly string[]): Refusal => [
    `the backup did not come out as the store is: ${problems.slice(0, 5).map(shown).join('; ')}`,
    'Nothing was left behind. Check the disk, then try again.',
  ],
};

/** Words beside a bar of progress. */
export const EXCHANGE_TEXT = { filesRead: 'files read', filesStored: 'files brought in' } as const;

/** Questions of `import` on a terminal. */
export const importQuestions = {
  unit: 'Unit of the temperatures (C, F or K)?',
  timeUnit: 'Unit of the times (s, ms, us, min or h)?',
  timeColumn: 'Heading or number of the time column (Enter: none, the rows came at even intervals)?',
  interval: 'Time from row to row, such as 0.5s?',
  temperatureColumn: 'Heading or number of the column of the bond line?',
  assembly: 'Assembly, such as WB-212?',
  press: 'Press, such as North?',
  closedAt: (file: string): string =>
    `${shown(file)}: when the press closed is only known from the rise, which gives a short soak time.\nPress closed, counted from the first reading, such as 12.5s (Enter: leave it so)?`,
  needed: 'An answer is needed.',
  above0: 'Write a time above 0, such as 0.5s.',
  oneOf: (words: readonly string[]): string => `Write one of ${words.join(', ')}.`,
};
