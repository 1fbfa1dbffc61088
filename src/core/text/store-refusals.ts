/** Sentences about the store's file. `[message, remedy]` each. */
type Refusal = readonly [message: string, remedy: string];

export const storeRefusals = {
  missing: (path: string): Refusal => [
    `there is no store at ${path}`,
    'Check --store and DWELLWRIGHT_STORE; a trial makes the file at its first start.',
  ],
  folder: (path: string): Refusal => [
    `the store should be a file, but ${path} is a folder`,
    'Name a file, for example store.db inside that folder.',
  ],
  folderMissing: (path: string, cause: string): Refusal => [
    `the folder of the store ${path} cannot be made: ${cause}`,
    'Name a place you may write to with --store or DWELLWRIGHT_STORE.',
  ],
  cannotOpen: (path: string, cause: string): Refusal => [
    `the store ${path} cannot be opened: ${cause}`,
    'Check that you may read and write the file and its folder, or name another with --store or DWELLWRIGHT_STORE.',
  ],
  notAStore: (path: string): Refusal => [
    `${path} is no store of this program: expected a store file, came something else`,
    'Name another file with --store or DWELLWRIGHT_STORE; this one is left as it is.',
  ],
  newer: (path: string, migration: string): Refusal => [
    `the store ${path} was made by a newer program: it holds the change "${migration}", which this program does not know`,
    'Use that newer program, or name another store. Nothing was changed in the file.',
  ],
  migrationMissing: (path: string, migration: string): Refusal => [
    `the store ${path} lacks the change "${migration}" although a later one is there`,
    'The file was altered from outside. Take a copy from before, or name another store.',
  ],
  migrationDiffers: (path: string, expected: string, came: string): Refusal => [
    `the store ${path} was built otherwise: expected the change "${expected}", came "${came}"`,
    'The file was altered from outside, or made by an unofficial build. Take a copy from before, or name another store.',
  ],
  olderReadonly: (path: string, migration: string): Refusal => [
    `the store ${path} is of an older program: it still needs the change "${migration}", and it is opened for reading only`,
    'Open it once for writing; it is brought up to date by itself.',
  ],
  noWal: (path: string, came: string): Refusal => [
    `the store ${path} cannot be written safely here: expected journal mode wal and synchronous FULL, came ${came}`,
    'Put the store on a local disk (not a network drive) with --store or DWELLWRIGHT_STORE.',
  ],
  busy: (path: string): Refusal => [
    `the store ${path} is held by another program and was not free in time`,
    'Wait until the other program is done, or close it, then try again.',
  ],
  diskFull: (path: string): Refusal => [
    `the disk that holds the store ${path} is full; the latest readings are not on disk`,
    'Free some space now. What was stored before is whole; what waits is written as soon as there is space.',
  ],
  readOnly: (path: string): Refusal => [
    `the store ${path} may not be written`,
    'Check the rights of the file and its folder, or name another with --store or DWELLWRIGHT_STORE.',
  ],
  diskFault: (path: string, detail: string): Refusal => [
    `the disk refused to read or write the store ${path} (${detail})`,
    'Check the disk and its free space. Copy the store to another disk before going on.',
  ],
  corrupt: (path: string, detail: string): Refusal => [
    `the store ${path} is damaged (${detail})`,
    'Do not write to it any more. Keep the file, take the latest copy of it, or name another store.',
  ],
  failed: (path: string, detail: string): Refusal => [
    `the store ${path} could not do this (${detail})`,
    'This should not happen; please report it with what you did.',
  ],
  closed: (path: string): Refusal => [`the store ${path} is already closed`, 'Open it again first.'],
  recordingExists: (recordingId: string): Refusal => [
    `a recording "${recordingId}" is already in the store`,
    'Each recording needs an id of its own. A recording that is there is never overwritten.',
  ],
  noRecording: (recordingId: string): Refusal => [
    `there is no recording "${recordingId}" in the store`,
    'List the recordings and check the id.',
  ],
  noTrial: (trialId: string): Refusal => [
    `there is no trial "${trialId}" in the store`,
    'List the trials and check the id.',
  ],
  trialExists: (trialId: string): Refusal => [
    `a trial "${trialId}" is already in the store`,
    'Each trial needs an id of its own.',
  ],
  recordingClosed: (recordingId: string): Refusal => [
    `the recording "${recordingId}" is closed; nothing can be added to it`,
    'Start a new recording.',
  ],
  notFinite: (what: string, came: string): Refusal => [
    `${what} should be a finite number, came ${came}`,
    'A value that is not known is stored as unknown, never as a number.',
  ],
  unreadable: (what: string, expected: string): Refusal => [
    `${what} in the store cannot be read: ${expected}`,
    'Work it out again from its recording; the recording itself is untouched.',
  ],
};
