import type { ChannelRole } from '../recording/RecordingEntry.ts';

/** Words shared by every screen around the trial. */
export const SHELL_TEXT = {
  tooSmall: (columns: number, rows: number) =>
    `The window is ${columns} × ${rows}; this screen needs 80 × 24. Make it larger.`,
  simulated: 'SIMULATED',
  quit: 'Leave Dwellwright? Everything is kept.',
  keysTogether: 'Several keys at once: none taken. Press one key.',
  store: (path: string) => `store ${path}`,
  free: (gigabytes: string) => `${gigabytes} GB free`,
} as const;

export const GUIDE_TEXT = {
  enterTakes: (answer: string) => `Enter takes ${answer}`,
  trouble: (why: string) => `Not taken: ${why}`,
  needed: 'a name is needed',
  pathNeeded: 'a path is needed',
  tooLong: 'at most 40 letters',
} as const;

export const SHELL_KEYS = {
  help: { key: 'H', does: 'help' },
  helpTyping: { key: 'Tab', does: 'help' },
  back: { key: 'Esc', does: 'back' },
  quit: { key: 'Q', does: 'quit' },
  yes: { key: 'Y', does: 'yes' },
  no: { key: 'Esc', does: 'no' },
  next: { key: 'Enter', does: 'next' },
  start: { key: 'Enter', does: 'start' },
  done: { key: 'Enter', does: 'done' },
  take: { key: 'Enter', does: 'take' },
  doIt: { key: 'Enter', does: 'do this' },
  choose: { key: '↑ ↓', does: 'choose' },
  scroll: { key: '↑ ↓', does: 'scroll' },
  add: { key: 'N', does: 'new' },
  change: { key: 'C', does: 'change' },
  unit: { key: 'F', does: '°F/°C' },
  closeTrial: { key: 'X', does: 'close the open trial' },
  byNumber: { key: '1–8', does: 'change a line' },
} as const;

export const HOME_TEXT = {
  title: 'Dwellwright: soak time and dwell at the bonding press',
  next: 'Next:',
  menu: {
    t: ['Trial', 'time a bond line'],
    r: ['Records', 'trials and charts'],
    p: ['Pressure', 'gauge for a ring'],
    s: ['Set-up', 'press and reader'],
    d: ['Demo', 'all simulated'],
  },
  /** Ways into other parts of the program. */
  entries: {
    bond: ['Bonding', 'timer and log'],
    warmUp: ['Warm-up', 'cold to READY'],
  },
  headings: {
    reader: 'Reader',
    presses: 'Presses',
    assemblies: 'Assemblies',
    recipes: 'Recipes',
    trials: 'Recent trials',
  },
  none: 'none yet',
  noTrial: 'none yet: the first one starts with T',
  noRecipe: 'none yet: a trial makes one',
  more: (count: number) => `and ${count} more`,
  looking: 'looking for one',
  /** In the lowest line, where no heading stands before it. */
  status: (reader: string) => `reader: ${reader}`,
  noReader: 'none plugged in',
  pluggedIn: (path: string) => `${path} plugged in`,
  moreReaders: (path: string, count: number) => `${path} and ${count} more plugged in`,
  simulated: 'simulated reader',
  runs: (count: number) => (count === 1 ? '1 run' : `${count} runs`),
  openTrial: (simulated: boolean) => (simulated ? 'OPEN SIM.' : 'OPEN'),
  scanUnknown: (text: string) => `Scanned ${text}: no press or assembly has this name.`,
  demoStored: (path: string) =>
    `The demo is in a store of its own: ${path}. See it with dwellwright home --store and that file.`,
  scanned: (text: string) => `Scanned: ${text}`,
  saved: (name: string) => `Saved: ${name}`,
  readerSaved: 'Reader and channels are kept for this press.',
  closeTrialAsked: 'Close the open trial? Its runs stay in the records.',
  trialClosed: 'The trial is closed. Its runs are in the records.',
  pressFirst: 'Choose the press first: its channels are kept with it.',
  nothingToStart: 'Fill the lines marked with a question mark first.',
  suggestion: {
    goOn: (what: string, when: string) => [
      'GO ON',
      `The trial of ${what}, begun ${when}, is still open. Enter goes on with it; X closes it.`,
    ],
    setUp: [
      'SET UP',
      'First use: name the press, the assembly and the reader. D shows the whole job on a simulated reader.',
    ],
    press: ['ADD A PRESS', 'The press: its ram and its platens.'],
    assembly: ['ADD AN ASSEMBLY', 'The assembly: its ring, its carrier, its target and hold.'],
    reader: ['CHOOSE A READER', 'Say where the reader is plugged in and what each channel is laid on.'],
    plugIn: (path: string) => [
      'PLUG IN READER',
      `The reader at ${path} is not there. Plug it in, or choose another in the set-up.`,
    ],
    result: (what: string, runs: number) => [
      'SEE THE RESULT',
      `The trial of ${what} has ${runs} ${runs === 1 ? 'run that counts' : 'runs that count'} and no recipe yet.`,
    ],
    choose: 'Choose press and assembly',
    trial: (what: string) => ['START A TRIAL', `${what}. Enter shows what it starts with.`],
  },
} as const;

export const TRIAL_PAGE_TEXT = {
  title: 'Start a trial',
  goOnTitle: 'Go on with a trial',
  word: 'START',
  lines: {
    press: 'Press',
    assembly: 'Assembly',
    reader: 'Reader',
    channels: 'Channels',
    ring: 'Ring',
    coating: 'Coating',
    probe: 'Probe',
    initials: 'Initials',
  },
  missing: '? choose',
  notStated: 'not stated',
  simulatedChannels: 'as the simulated reader has them',
  scan: 'A scan of a press or an assembly fills its line.',
} as const;

export const SET_UP_TEXT = {
  title: 'Set-up',
  word: 'SET UP',
  choices: {
    p: ['Presses', 'ram, platens, gauge'],
    a: ['Assemblies', 'ring, carrier, target, hold'],
    r: ['Reader', 'port, and what each channel is laid on'],
  },
} as const;

export const CHOOSE_TEXT = {
  press: {
    title: 'Presses',
    empty: 'No press yet. N adds one.',
    headings: ['press', 'ram', 'platens', 'gauge division'],
  },
  assembly: {
    title: 'Assemblies',
    empty: 'No assembly yet. N adds one.',
    headings: ['assembly', 'ring OD / ID', 'carrier', 'target', 'hold'],
  },
} as const;

/** What a refused answer was to be. */
export const ASKED = {
  bore: 'ram bore',
  division: 'gauge division',
  upper: 'upper platen',
  lower: 'lower platen',
  outer: 'ring outer diameter',
  inner: 'ring inner diameter',
  net: 'net facing pressure',
} as const;

/** Questions that lead through a press, an assembly and a reader. */
export const QUESTIONS = {
  press: {
    title: 'A press',
    name: {
      title: 'NAME',
      ask: 'What is the press called?',
      hints: ['Type a short name, or scan its label. Example: North'],
    },
    bore: {
      title: 'RAM BORE',
      ask: 'Bore of the ram, with its unit?',
      hints: [
        'Examples: 200 mm, 8 in, 7 7/8 in',
        'Needed for the gauge pressure. Enter alone leaves it open.',
      ],
    },
    rams: {
      title: 'RAMS',
      ask: 'How many rams close the press?',
      one: 'one ram',
      two: 'two rams',
      three: 'three rams',
      four: 'four rams',
    },
    platens: {
      title: 'PLATENS',
      ask: 'Set point of the platens, with its unit?',
      hints: [
        'One value, or upper/lower. Examples: 450F, 232C, 450F/445F',
        'A set point is not a platen temperature: measure the platens where you can.',
      ],
    },
    division: {
      title: 'GAUGE',
      ask: 'One division of the gauge, with its unit?',
      hints: [
        'Examples: 2 psi, 0.1 bar',
        'Shows what reading it one division wrong does. Enter alone leaves it open.',
      ],
    },
  },
  assembly: {
    title: 'An assembly',
    name: {
      title: 'NAME',
      ask: 'What is the assembly called?',
      hints: ['Type its number, or scan it. Example: WB-212'],
    },
    outer: {
      title: 'RING OD',
      ask: 'Outer diameter of the ring, with its unit?',
      hints: ['Examples: 212 mm, 8.346 in. Enter alone leaves it open.'],
    },
    inner: {
      title: 'RING ID',
      ask: 'Inner diameter of the ring, with its unit?',
      hints: ['Examples: 168 mm, 6 5/8 in. Enter alone leaves it open.'],
    },
    innerTooLarge: 'the inner diameter must be smaller than the outer',
    carrier: {
      title: 'CARRIER',
      ask: 'What is the carrier?',
      hints: ['Example: brake plate, steel. Enter alone leaves it open.'],
    },
    target: {
      title: 'TARGET',
      ask: 'Bond-line target, with its unit?',
      hints: ['From the adhesive’s data sheet. 350F is common practice, no source.'],
    },
    hold: {
      title: 'HOLD',
      ask: 'Hold at or above target, with its unit?',
      hints: ['From the adhesive’s data sheet. 120 s is common practice, no source.'],
    },
    net: {
      title: 'PRESSURE',
      ask: 'Net facing pressure on the ring, with its unit?',
      hints: [
        'From the adhesive’s data sheet. Example: 200 to 250 psi',
        'It gives the gauge pressure. 200 to 250 psi is common practice, no source.',
      ],
    },
  },
  reader: {
    title: 'The reader',
    port: { title: 'READER', ask: 'Where is the reader?' },
    simulated: ['simulated reader', 'no hardware: its press closes with key C'],
    usedLast: 'used last',
    typed: ['another port', 'type its path'],
    path: { title: 'PORT', ask: 'Path of the port?', hints: ['Example: /dev/ttyACM0, or COM3'] },
    unit: { title: 'UNIT', ask: 'Which unit does the reader send?' },
    units: {
      reader: ['it says so', 'most readers'],
      F: ['°F', 'it prints bare numbers'],
      C: ['°C', 'it prints bare numbers'],
    },
    channels: { title: 'CHANNELS', ask: 'What is each channel laid on?' },
    sets: {
      last: 'as last time',
      one: ['one probe', 'channel 1 bond line'],
      two: ['two probes', '1 bond line, 2 bond line at the outer edge'],
      four: ['four channels', '1 bond line, 2 outer edge, 3 upper platen, 4 lower platen'],
      each: ['one by one', 'say it for each channel'],
    },
    channel: (number: number) => ({ title: `CHANNEL ${number}`, ask: `What is channel ${number} laid on?` }),
    noMore: ['no more channels', 'the reader has no further one'],
    noBondLine: 'One channel must be on the bond line: say it again.',
  },
  initials: {
    title: 'INITIALS',
    ask: 'Your initials?',
    hints: ['Kept with the recording. Enter alone leaves them out.'],
  },
} as const;

/** What a channel is laid on, in words for a choice. */
export const ROLE_CHOICE: Readonly<Record<ChannelRole, string>> = {
  'bond-line': 'bond line',
  'bond-line-inner': 'bond line, inner edge',
  'bond-line-outer': 'bond line, outer edge',
  'upper-platen': 'upper platen',
  'lower-platen': 'lower platen',
  ambient: 'ambient',
  unused: 'unused',
};

export const PRESSURE_PAGE_TEXT = {
  word: (psi: string) => `GAUGE ${psi} PSI`,
  title: (assembly: string, press: string) => `Pressure: ${assembly} on press ${press}`,
  missing: 'Ring sizes and the ram’s bore are needed. Add them in the set-up, keys S then A or P.',
} as const;
