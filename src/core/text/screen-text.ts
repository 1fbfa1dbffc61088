import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { ChannelFault } from '../wire/WireEvent.ts';
import { secondsText } from './units-text.ts';

/** Words of the trial screen. The screen states what is; it never commands a press. */
export const MARK_LABEL = { closed: 'closed', crossing: 'crossing', opened: 'opened' } as const;

/** State words in block letters: at most two rows of eleven letters. */
export const STATE_WORD = {
  'no-reader': ['NO READER'],
  refused: ['UNIT', 'UNKNOWN'],
  stale: ['OLD READING'],
  fault: ['PROBE FAULT'],
  open: ['PROBE OPEN'],
  waiting: ['WAITING'],
  heating: ['HEATING'],
  hold: ['HOLD'],
  dipped: ['TOO COLD'],
  'hold-done': ['HOLD DONE'],
  'hold-done-after-dip': ['HOLD DONE', 'AFTER A DIP'],
  'hold-not-verified': ['HOLD NOT', 'VERIFIED'],
  opened: ['OPENED'],
  good: ['RUN GOOD'],
  suspect: ['SUSPECT'],
  unusable: ['UNUSABLE'],
  spoilt: ['SPOILT'],
} as const satisfies Record<string, readonly string[]>;

export type StateName = keyof typeof STATE_WORD;

export const FAULT_TEXT: Readonly<Record<ChannelFault, string>> = {
  'open-circuit': 'open circuit: wire broken or plug loose',
  'short-to-ground': 'short to ground',
  'short-to-supply': 'short to supply',
  'over-range': 'over range',
  'cold-junction': 'cold junction of the reader failed',
  unspecified: 'reader reports a fault',
};

/** Channel names, and short ones for a narrow window. */
export const CHANNEL_NAME: Readonly<Record<Exclude<ChannelRole, 'unused'>, readonly [string, string]>> = {
  'bond-line': ['bond line', 'bond line'],
  'bond-line-inner': ['bond line, inner edge', 'inner'],
  'bond-line-outer': ['bond line, outer edge', 'outer'],
  'upper-platen': ['upper platen', 'upper'],
  'lower-platen': ['lower platen', 'lower'],
  ambient: ['ambient', 'ambient'],
};

export const SCREEN_TEXT = {
  simulated: 'SIMULATED',
  tooSmall: (columns: number, rows: number) =>
    `The window is ${columns} × ${rows}; this screen needs 80 × 24. Make it larger. Recording goes on.`,
  waitingFor: 'Key C at the moment the press closes.',
  waitingContact: 'The press-closed contact starts the run; key C works as well.',
  checkFirst: 'Key K: ready check. Key C at the moment the press closes.',
  noReader: 'No reading yet. Is the reader plugged in and speaking?',
  readerLost: (cause: string) => `Reader lost: ${cause}. It comes back by itself; the run goes on.`,
  stale: (ageS: string) => `Latest reading ${ageS} old: see to reader and cable.`,
  holdUnseen: 'Readings were missing during the hold.',
  dipped: (dip: 'restarts' | 'pauses') =>
    dip === 'restarts'
      ? 'Below target: the hold starts again. Hold not verified so far.'
      : 'Below target: the hold waits. Hold not verified so far.',
  holdAgain: (dip: 'restarts' | 'pauses', dips: number) =>
    `${dips === 1 ? 'A dip' : `${dips} dips`} below target: ${dip === 'restarts' ? 'the hold counts anew since' : 'left out of the hold'}.`,
  holdDoneAfterDip: (dip: 'restarts' | 'pauses', dips: number, holdS: number) =>
    dip === 'restarts'
      ? `${secondsText(holdS)} unbroken after ${dips === 1 ? 'a dip' : `${dips} dips`}; the time before does not count.`
      : `${secondsText(holdS)} in all, not unbroken: ${dips === 1 ? 'a dip is' : `${dips} dips are`} left out (rule: a dip pauses).`,
  crossed: (soak: string) => `Crossing: target reached after ${soak}.`,
  holdDone: 'The bond line has had its hold.',
  opened: 'Working out the run.',
  replayOnly: 'This is a replay: nothing is marked or kept. Q leaves it.',
  keysTogether: 'Several keys at once: none taken. Press one key.',
  repeated: 'Same key again within 1 s: not taken.',
  marked: {
    'press-closed': 'Marked: press closed.',
    opened: 'Marked: opened.',
    spoilt: 'Marked: spoilt run.',
  },
  undone: {
    'press-closed': 'Taken back: press closed. P puts it back.',
    opened: 'Taken back: opened. P puts it back.',
    spoilt: 'Taken back: spoilt. P puts it back.',
  },
  putBack: {
    'press-closed': 'Put back: press closed.',
    opened: 'Put back: opened.',
    spoilt: 'Put back: spoilt run.',
  },
  fromOnset: 'Press closed taken back: the run will not count. P puts it back.',
  notPassed: (what: string) => `Ready check not passed: ${what}. W: why go on?`,
  nothingToUndo: 'No mark to take back.',
  noted: 'Note kept.',
  nothingCounts: 'No run counts yet: no dwell to accept.',
  scanned: (text: string) => `Scanned: ${text}, as this trial has it.`,
  scanOther: (text: string, assembly: string) =>
    `Scanned ${text}, but this trial is of ${assembly}: wrong part in the press?`,
  pages: { runs: 'Runs of this trial', budget: 'Uncertainty of the soak time' },
  questions: {
    cautions: 'Before the first run',
    quit: 'Leave the trial? Everything is kept, and the trial can be gone on with.',
    quitReplay: 'Leave the replay?',
    note: 'Note',
    notPassed: (what: string) => `Not passed: ${what}. Why go on?`,
    spoilt: 'Spoilt run. Why?',
    setAside: (run: number) => `Set run ${run} aside. Why?`,
    takenIn: (run: number) => `Take run ${run} in. Why?`,
    onlySuspect: 'Only a suspect run can be taken in; an unusable one never.',
    rule: 'Which dwell? The stricter one is chosen first.',
    ruleReason: 'The less strict dwell. Why?',
    initials: 'Your initials',
    recipeNote: 'Note to the recipe (Enter alone: none)',
  },
} as const;
