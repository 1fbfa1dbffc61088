/** Sentences about files that are read or written. `[message, remedy]` each. */
type Refusal = readonly [message: string, remedy: string];

export const fileRefusals = {
  missing: (path: string): Refusal => [
    `there is no file ${path}`,
    'Check the name and the folder you are in; put names with spaces in quotes.',
  ],
  folder: (path: string): Refusal => [
    `${path} is a folder, expected a file`,
    'Name the file in it that you mean.',
  ],
  notAllowed: (path: string, cause: string): Refusal => [
    `you may not read ${path} (${cause})`,
    'Ask for the right to read it, or copy it to a folder of your own.',
  ],
  notWritten: (path: string, cause: string): Refusal => [
    `${path} could not be written (${cause}); what was there before is unchanged`,
    'Check the folder, its rights and the free space, or name another place.',
  ],
  unreadable: (path: string, cause: string): Refusal => [
    `${path} could not be read (${cause})`,
    'Check the disk or the connection to it, then try again.',
  ],
  empty: (path: string): Refusal => [
    `${path} is empty, expected readings`,
    'Check that the logger has finished writing it, or pick another file.',
  ],
  tooLarge: (path: string, megabytes: number, limitMegabytes: number): Refusal => [
    `${path} is too large for a log: ${megabytes} MB, expected at most ${limitMegabytes} MB`,
    'Export a shorter stretch of time, for example one trial.',
  ],
};
