/** Words of the records: lists, charts, replay. */
export const RECORDS_TEXT = {
  title: 'Records',
  trialsTitle: 'Records: trials',
  recipesTitle: 'Records: recipes',
  trialTitle: (what: string, when: string) => `Trial of ${what}, ${when}`,
  chartTitle: (what: string, runs: string) => `Chart: ${what}, ${runs}`,
  cyclesTitle: (assembly: string | null, press: string | null) =>
    `Records: cycles${assembly === null ? '' : ` of ${assembly}`}${press === null ? '' : ` on ${press}`}`,
  cycleTitle: (what: string, when: string) => `Cycle of ${what}, ${when}`,
  cycleChartTitle: (what: string, when: string) => `Chart: cycle of ${what}, ${when}`,
  readingCycles: 'Reading the log …',
  noCycle: 'No cycle of production logged yet. B on the home times one.',
  andMore: 'more',
  noCycleSuch: 'No cycle of these. A and P choose others.',
  cycleHeadings: ['closed', 'assembly', 'press', 'version', 'held', 'result'],
  noTrial: 'No trial yet. Esc goes back; T on the home starts one, D shows the demo.',
  noRecipe: 'No recipe yet. A trial with runs that count makes one.',
  noRun: 'No run was recorded in this trial.',
  noTrace: 'There are no readings to draw.',
  trialHeadings: ['begun', 'assembly', 'press', 'runs', 'count', 'mean soak', ''],
  runHeadings: ['', 'run', 'soak time', 'start', 'slope', 'verdict', 'remark'],
  recipeHeadings: ['assembly', 'press', 'version', 'dwell', 'accepted', ''],
  open: 'open',
  provisional: 'provisional',
  counts: 'counts',
  picked: (runs: string) => `Picked for one chart: runs ${runs}. Enter draws them.`,
  runOf: (number: number) => `run ${number}`,
  runsOf: (numbers: string) => `runs ${numbers}`,
  because: (reason: string) => `Decided because: ${reason}`,
  leftOut: (why: string) => `Left out: ${why}.`,
  note: (text: string) => `Note: ${text}`,
  good: 'No remark.',
  setAside: (run: number) => `Set run ${run} aside. Why?`,
  takeIn: (run: number) => `Take run ${run} in. Why?`,
  onlySuspect: 'Only a suspect run can be taken in; an unusable one never.',
  decided: (run: number) => `Kept: the decision on run ${run}.`,
  replaySpeed: 'Replay how fast?',
  replaySpeeds: [
    { key: '1', word: '× 1', detail: 'as it was', value: 1 },
    { key: '2', word: '× 5', detail: '', value: 5 },
    { key: '3', word: '× 20', detail: '', value: 20 },
    { key: '4', word: '× 100', detail: 'a run in two or three seconds', value: 100 },
  ],
  initials: 'Accept the stricter dwell as a recipe. Your initials?',
  accepted: (version: number, dwell: string) => `Recipe kept: version ${version}, dwell ${dwell}.`,
  recipeAccepted: (recipe: {
    readonly assemblyName: string;
    readonly pressName: string;
    readonly version: number;
    readonly dwellS: number;
  }) =>
    `Recipe accepted: ${recipe.assemblyName} on ${recipe.pressName}, version ${recipe.version}, dwell ${recipe.dwellS} s`,
  cursor: (at: string) => `at ${at} from press closed`,
  cursorFromStart: (at: string) => `at ${at} from the start of the recording`,
  noValue: 'no value',
  cursorLabel: 'cursor',
  overlay: 'Bond line only; time from press closed.',
} as const;

export const RECORDS_KEYS = {
  open: { key: 'Enter', does: 'open' },
  recipes: { key: 'R', does: 'recipes' },
  trials: { key: 'T', does: 'trials' },
  cycles: { key: 'C', does: 'cycles' },
  openCycle: { key: 'Enter', does: 'open' },
  assembly: { key: 'A', does: 'assembly' },
  press: { key: 'P', does: 'press' },
  newer: { key: '↑ ↓', does: 'next cycle' },
  chart: { key: 'Enter', does: 'chart' },
  pick: { key: 'Space', does: 'pick for overlay' },
  all: { key: 'A', does: 'overlay of all' },
  setAside: { key: 'X', does: 'set aside' },
  takeIn: { key: 'T', does: 'take in' },
  automatic: { key: 'B', does: 'back to its verdict' },
  replay: { key: 'P', does: 'replay' },
  speed: { key: '1–4', does: 'how fast' },
  goOn: { key: 'G', does: 'go on with it' },
  accept: { key: 'I', does: 'accept recipe' },
  cursor: { key: '← →', does: 'cursor' },
  zoom: { key: '↑ ↓', does: 'zoom in, out' },
  whole: { key: 'W', does: 'whole run' },
  wholeCycle: { key: 'W', does: 'whole cycle' },
  nextRun: { key: 'N', does: 'next run' },
  target: { key: 'X', does: 'cursor to crossing' },
} as const;

/** A stored run on the trial screen. */
export const REPLAY_TEXT = {
  badge: (speed: number) => `REPLAY ×${speed}`,
  reader: (run: number, speed: number) => `stored run ${run}, ×${speed}`,
  over: 'The replay has come to the end of the run. Q leaves it.',
} as const;
