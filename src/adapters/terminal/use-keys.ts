import { type Key, useApp, useInput } from 'ink';

/** What a screen ends with where Ctrl-C left it. */
export const INTERRUPTED = 'interrupted';

/** Hands each input to `take`, but for Ctrl-C, which leaves the screen at once. */
export function useKeys(take: (input: string, key: Key) => void): void {
  const { exit } = useApp();
  useInput((input, key) => {
    // Ink's type knows errors only; it resolves with any value.
    if (key.ctrl && input === 'c') (exit as (value: string) => void)(INTERRUPTED);
    else take(input, key);
  });
}
