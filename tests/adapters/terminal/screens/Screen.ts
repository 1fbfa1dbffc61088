import type { StyledRow } from '../../../../src/core/chart/StyledRow.ts';
import type { KeyHint } from '../../../../src/core/text/keys-text.ts';

/** One screen of the program in one state, as a test sees it. */
export interface Screen {
  readonly rows: (columns: number, rows: number, ascii: boolean) => readonly StyledRow[];
  readonly keys: readonly KeyHint[];
  /** What a key does, pressed alone: whether anything but the clock, a message or the input buffer is different then. */
  readonly press: (name: string) => boolean;
  readonly simulated: boolean;
  /** The state's word or two, which stand in block letters (in ASCII the first alone may). Empty where a page lies over them. */
  readonly words: readonly string[];
}
