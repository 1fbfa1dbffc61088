import type { ChartSpec } from '../chart/ChartSpec.ts';
import type { SegmentRole } from '../chart/StyledRow.ts';
import type { KeyHint } from '../text/keys-text.ts';
import type { StateName } from '../text/screen-text.ts';
import type { DrawPage } from './pages/PageSize.ts';
import type { StatusPart } from './status-lines.ts';

export interface ViewLine {
  readonly text: string;
  readonly role: SegmentRole;
}

export interface RunRow {
  readonly cells: readonly string[];
  readonly role: SegmentRole;
  readonly selected: boolean;
}

export interface DialogView {
  /** 'line': in the message row; 'page': over the chart; 'cover': over all but title and status. */
  readonly place: 'line' | 'page' | 'cover';
  readonly question: string;
  readonly lines: readonly ViewLine[];
  /** Typed text, null where none is asked for. */
  readonly entry: string | null;
  /** Draws what stands under the question instead of `lines`: the whole page ('cover') or the part under the figure ('page'). */
  readonly draw?: DrawPage;
}

/** Everything the trial screen shows, ready to lay out: words are chosen, numbers have their units. */
export interface TrialView {
  readonly columns: number;
  /** Rows to draw: one less than the window has. */
  readonly rows: number;
  readonly ascii: boolean;
  /** Set when the window is too small; nothing else is drawn then. */
  readonly tooSmall: string | null;
  readonly title: string;
  readonly simulated: boolean;
  /** Marks in the title what is not a live press; '' for a live one. */
  readonly badge: string;
  readonly figure: {
    readonly text: string;
    readonly unit: string;
    readonly faded: boolean;
    readonly caption: string;
    /** A further line under the caption. */
    readonly below?: string;
  };
  readonly state: {
    readonly name: StateName;
    readonly words: readonly string[];
    readonly role: SegmentRole;
    readonly flash: boolean;
  };
  /** What to do next, in block letters beside the state. */
  readonly next: string;
  readonly facts: readonly ViewLine[];
  /** Letter, name and value of each channel; `brief` where room is short, `least` without its name. */
  readonly channels: readonly (ViewLine & { readonly brief: string; readonly least: string })[];
  readonly conditions: string;
  readonly chart: Omit<ChartSpec, 'columns' | 'rows'> | null;
  /** True between two runs: the runs take the width, with what they come to. */
  readonly between: boolean;
  /** Draws the runs over the whole width. */
  readonly drawRuns: DrawPage;
  readonly runHeadings: readonly string[];
  readonly runs: readonly RunRow[];
  readonly summary: readonly string[];
  readonly dwell: readonly string[];
  readonly notice: ViewLine | null;
  readonly dialog: DialogView | null;
  readonly keys: readonly KeyHint[];
  readonly status: readonly StatusPart[];
}

export interface ViewOptions {
  /** Size of the window. */
  readonly columns: number;
  readonly rows: number;
  readonly ascii: boolean;
}
