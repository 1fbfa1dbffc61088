import type { NamedKey } from '../../../../src/core/screen/ScreenInput.ts';

/** Keys that have no character, but for Backspace, which only edits. */
export const NAMED = [
  'enter',
  'escape',
  'up',
  'down',
  'left',
  'right',
  'tab',
] as const satisfies readonly NamedKey[];

const WORDS: Readonly<Record<string, readonly string[]>> = {
  Enter: ['enter'],
  Esc: ['escape'],
  Tab: ['tab'],
  Space: ['space'],
  '+': ['+'],
  '-': ['-'],
  '↑ ↓': ['up', 'down'],
  '← →': ['left', 'right'],
};

/** The keys that a hint of the key line stands for. */
export function keyNames(hint: string): readonly string[] {
  const range = /^(\d)–(\d)$/.exec(hint);
  if (range !== null) {
    const [from, to] = [Number(range[1]), Number(range[2])];
    return Array.from({ length: to - from + 1 }, (_, i) => `${from + i}`);
  }
  const names = WORDS[hint] ?? (/^[A-Z]$/.test(hint) ? [hint.toLowerCase()] : null);
  if (names === null) throw new Error(`no key is called "${hint}"`);
  return names;
}

/** Every single key a person may press. */
export const EVERY_KEY: readonly string[] = [...'abcdefghijklmnopqrstuvwxyz0123456789', 'space', ...NAMED];
