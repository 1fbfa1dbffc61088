/** Full help of the trial screen: what is seen, and every key with what it does. */
export const TRIAL_HELP = {
  title: 'Help',
  below: 'More below: ↓',
  above: 'More above: ↑',
  seen: [
    'Large figure: the bond line, the coldest probe; in the hold, the seconds left.',
    'In a broken shade: old. ---: no value to trust.',
    'Shade behind the chart: the earlier runs of this trial.',
  ],
  keys: [
    ['C', 'press closed, at that moment; a pedal as well; in a marked run it asks first'],
    ['O', 'press opened; a pedal as well, once the hold is done'],
    ['X', 'spoilt run, with the reason; after a run it takes that run out'],
    ['U', 'take back the latest mark; an older one after a question'],
    ['P', 'put it back again; in a replay: halt, go on; + and - its speed'],
    ['N', 'a note, kept with the run'],
    ['K', 'ready check before a run'],
    ['R', 'runs: reasons, set aside, take in'],
    ['D', 'suggested dwell; E there: the whole uncertainty budget'],
    ['V', 'all runs over each other'],
    ['A', 'accept the dwell as a recipe'],
    ['F', '°F or °C'],
    ['W', 'why the run went on although the ready check was not passed'],
    ['↑ ↓', 'between runs: the others in the table'],
    ['H', 'this help, on every page'],
    ['Q', 'leave; everything is kept'],
  ],
} as const;
