import type { StyledRow } from '../chart/StyledRow.ts';
import type { ViewLine } from '../screen/TrialView.ts';
import type { KeyHint } from '../text/keys-text.ts';

/** Room a page may fill. */
export interface PageSize {
  readonly columns: number;
  readonly rows: number;
  readonly ascii: boolean;
}

/** A page of the program around the trial, ready to lay out. */
export interface ShellView {
  readonly title: string;
  /** Marks what is not a live press: SIMULATED, REPLAY. */
  readonly badge: string | null;
  /** Draws what lies between the title and the message; more rows than there is room for are cut. */
  readonly body: (size: PageSize) => readonly StyledRow[];
  readonly message: ViewLine | null;
  readonly keys: readonly KeyHint[];
  readonly status: readonly ViewLine[];
}
