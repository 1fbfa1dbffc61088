/** What a person (or a scanner, or a pedal that types a key) did, once it is clear which. */
export type ScreenInput =
  | { readonly kind: 'key'; readonly name: string; readonly atUs: number }
  /** A bar code: characters under 50 ms apart, ended by Enter, or a pasted line. Never taken for keys. */
  | { readonly kind: 'scan'; readonly text: string; readonly atUs: number }
  /** Several keys at once: cannot be told apart, so none counts. */
  | { readonly kind: 'keys-together'; readonly atUs: number };

/** Keys that have no character. */
export type NamedKey = 'enter' | 'escape' | 'backspace' | 'up' | 'down' | 'left' | 'right' | 'tab';

/** Characters not yet known to be a key or part of a scan. */
export interface InputBuffer {
  readonly text: string;
  readonly firstUs: number;
  readonly latestUs: number;
}

export const EMPTY_INPUT: InputBuffer = { text: '', firstUs: 0, latestUs: 0 };
