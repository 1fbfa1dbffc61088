/** Arrow keys for a terminal without arrows. */
export const UP_DOWN = 'Up Down';
export const LEFT_RIGHT = 'Left Right';

/** Keys of the trial screen and what they do, in the words of the key line. */
export const KEY_TEXT = {
  closed: { key: 'C', does: 'press closed' },
  opened: { key: 'O', does: 'press opened' },
  spoilt: { key: 'X', does: 'spoilt run' },
  note: { key: 'N', does: 'note' },
  undo: { key: 'U', does: 'undo mark' },
  putBack: { key: 'P', does: 'put mark back' },
  whyGoOn: { key: 'W', does: 'why go on' },
  takeBack: { key: 'Y', does: 'take back' },
  accept: { key: 'A', does: 'accept recipe' },
  check: { key: 'K', does: 'ready check' },
  dwell: { key: 'D', does: 'dwell' },
  overlay: { key: 'V', does: 'all runs' },
  explain: { key: 'E', does: 'whole budget' },
  help: { key: 'H', does: 'help' },
  confirm: { key: 'Enter', does: 'confirmed' },
  ready: { key: 'Enter', does: 'ready' },
  anyway: { key: 'W', does: 'go on anyway' },
  bell: { key: 'B', does: 'ring' },
  runs: { key: 'R', does: 'runs' },
  unit: { key: 'F', does: '°F/°C' },
  quit: { key: 'Q', does: 'quit' },
  yes: { key: 'Y', does: 'yes' },
  no: { key: 'Esc', does: 'no' },
  back: { key: 'Esc', does: 'back' },
  enter: { key: 'Enter', does: 'done' },
  read: { key: 'Enter', does: 'read and understood' },
  choose: { key: '↑ ↓', does: 'choose' },
  otherRuns: { key: '↑ ↓', does: 'other runs' },
  scroll: { key: '↑ ↓', does: 'scroll' },
  setAside: { key: 'X', does: 'set aside' },
  takeIn: { key: 'T', does: 'take in' },
  automatic: { key: 'B', does: 'back to its verdict' },
} as const;

export type KeyHint = { readonly key: string; readonly does: string };
