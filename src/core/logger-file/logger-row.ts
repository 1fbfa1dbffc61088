import { isComment } from './find-table.ts';
import { fixedWidthCells } from './fixed-width.ts';
import type { LoggerLayout } from './LoggerLayout.ts';
import { loggerCells } from './logger-cells.ts';
import { unlabelled } from './unlabelled.ts';

/** What a line of a recognised logger's file is. */
export type LoggerRow =
  | { readonly kind: 'row'; readonly cells: readonly string[] }
  | { readonly kind: 'heading' }
  | { readonly kind: 'remark' }
  /** Neither a row of the layout nor a heading. */
  | { readonly kind: 'misfit' };

/** Tells rows from headings that come again, comments and lines that do not fit, by the number of columns. */
export function loggerRow(text: string, layout: LoggerLayout): LoggerRow {
  if (isComment(text) || text.trim() === '') return { kind: 'remark' };
  if (layout.headingTexts.includes(text.trim())) return { kind: 'heading' };
  const split = loggerCells(layout.labelled ? unlabelled(text) : text, layout.delimiter);
  const cells =
    layout.cuts === undefined || split.length >= layout.columnCount
      ? split
      : (fixedWidthCells(text, layout.cuts) ?? split);
  if (cells.every((cell) => cell === '')) return { kind: 'remark' };
  const tooMany =
    cells.length > layout.columnCount && cells.slice(layout.columnCount).some((cell) => cell !== '');
  if (cells.length < layout.leastColumns || tooMany) return { kind: 'misfit' };
  const { only } = layout;
  return only === undefined || cells[only.column] === only.text ? { kind: 'row', cells } : { kind: 'remark' };
}
