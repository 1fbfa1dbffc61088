/** Press closed once more in a run that has it already: what it can mean, as large separate choices. */
export const CLOSED_AGAIN = {
  question: {
    key: (ago: string) => `Press closed is marked already, ${ago} before. What happened?`,
    pedal: (ago: string) => `Pedal again, ${ago} after press closed. What happened?`,
    contact: (ago: string) => `Contact again, ${ago} after press closed. What happened?`,
    takenBack: 'Press closed was taken back in this run. What happened?',
    unmarked: 'The target is reached, and press closed was not marked. What happened?',
  },
  choices: {
    keep: { key: 'Esc', does: 'nothing: the run goes on as it is' },
    putBack: { key: 'P', does: (ago: string) => `the press closed ${ago} ago: put the mark back` },
    correct: { key: 'T', does: 'the press closed only at this moment: correct the mark' },
    newRun: { key: 'N', does: 'a new run began at this moment; the one before ends' },
    opened: { key: 'O', does: 'the press opened at this moment' },
  },
  keys: {
    keep: { key: 'Esc', does: 'goes on' },
    putBack: { key: 'P', does: 'put back' },
    correct: { key: 'T', does: 'correct mark' },
    newRun: { key: 'N', does: 'new run' },
    opened: { key: 'O', does: 'opened' },
  },
  kept: 'Nothing changed: the run goes on.',
  corrected: 'Corrected: press closed.',
  newRun: 'New run: press closed.',
  restored: 'Taken back: the mark before holds again.',
  contactMeanwhile: 'Contact again: nothing marked.',
  letGo: 'The contact let go at once: a pedal. It marks the opening too, once the hold is done.',
} as const satisfies Record<string, unknown>;
