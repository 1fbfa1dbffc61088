/** Sentences about texts that cannot be opened as a recording. `[message, remedy]` each. */
export const recordingRefusals = {
  notOne: (firstLine: string): readonly [string, string] => [
    `this is no recording: its first line should be "dwellwright-recording: 1", came "${firstLine}"`,
    'If it is a log of another logger, replay it as such; otherwise check that you picked the right file.',
  ],
  otherVersion: (came: string): readonly [string, string] => [
    `this recording is of format version ${came}; this program reads version 1`,
    'Open it with the program version that made it, or with a newer one.',
  ],
  headCut: (lastKey: string | null): readonly [string, string] => [
    `the head of this recording is cut short${lastKey === null ? '' : ` after "${lastKey}"`}; expected a line "begin" after it`,
    'Nothing in it can be used. Take the copy from the press computer or from the store.',
  ],
  headWrong: (key: string, expected: string, came: string): readonly [string, string] => [
    `the head of this recording has a wrong "${key}": expected ${expected}, came ${came}`,
    'Correct that line in an editor; the recording will then open and say that it was altered.',
  ],
};
