/** Before a mark of some seconds ago is taken back: what would follow. */
export const UNDO_TEXT = {
  question: (what: 'press-closed' | 'opened' | 'spoilt', ago: string | null) => {
    const mark = { 'press-closed': 'press closed', opened: 'opened', spoilt: 'spoilt run' }[what];
    return `Take back ${mark}${ago === null ? '' : ` of ${ago} ago`}?`;
  },
  choices: {
    keep: { key: 'Esc', does: 'no: the mark stands' },
    takeBack: { key: 'Y', does: 'take it back:' },
  },
  follows: {
    'press-closed': 'the run is timed from the onset and will not count',
    opened: 'the run goes on',
    spoilt: 'the run is judged as any other',
  },
  otherHolds: 'of contact and key, the other mark still holds',
  otherHeld: 'Taken back: one of two marks of press closed. The other holds.',
  earlierHolds: 'the mark before holds again',
} as const;
