import type { Picture } from '../figure/Picture.ts';

/**
 * A report as plain data: the page and the PDF are both made of it. All text from readers, files and people is
 * already neutralised; whoever turns it into markup still escapes it.
 */
export interface ReportContent {
  readonly title: string;
  readonly subtitle: string;
  readonly simulated: boolean;
  /** Trial id or the like, at the foot of every page. */
  readonly reference: string;
  /** Wall time at which the report was made, ISO 8601. */
  readonly madeAt: string;
  /** Name and version of the program. */
  readonly program: string;
  readonly sections: readonly ReportSection[];
}

export interface ReportSection {
  readonly heading: string;
  readonly blocks: readonly ReportBlock[];
}

export type ReportBlock =
  | FactsBlock
  | TableBlock
  | DwellsBlock
  | { readonly kind: 'paragraphs'; readonly lines: readonly string[] }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'figure'; readonly picture: Picture; readonly caption: string }
  | { readonly kind: 'signatures'; readonly roles: readonly string[] };

/** Names and values side by side; an empty value leaves a line to write on. */
export interface FactsBlock {
  readonly kind: 'facts';
  readonly facts: readonly { readonly name: string; readonly value: string }[];
}

export interface TableBlock {
  readonly kind: 'table';
  readonly columns: readonly {
    readonly heading: string;
    readonly align: 'left' | 'right';
    /** Takes what width is left; the others take what they need. */
    readonly wide?: boolean;
    /** Width on paper, points, where a long heading shall wrap. */
    readonly width?: number;
    /** Long codes that may break anywhere (hashes). */
    readonly code?: boolean;
  }[];
  readonly rows: readonly { readonly cells: readonly string[]; readonly leftOut?: boolean }[];
}

/** Dwells by rules of equal weight: none larger, none first in anything but order. */
export interface DwellsBlock {
  readonly kind: 'dwells';
  readonly dwells: readonly {
    readonly name: string;
    /** "174 s", or why there is none. */
    readonly value: string;
    readonly worth: readonly string[];
  }[];
}
