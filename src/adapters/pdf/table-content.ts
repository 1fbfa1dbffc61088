import type { Content, TableCell } from 'pdfmake/interfaces.js';
import type { FactsBlock, TableBlock } from '../../core/report/ReportContent.ts';
import { breakable } from './breakable.ts';

const HAIR = '#d5d5d5';
const INK = '#1a1a1a';
/** Tables of so few rows are never split between pages. */
const MOST_ROWS_TOGETHER = 12;

/** Names and values; an empty value is a line to write on. */
export function factsContent(
  { facts }: FactsBlock,
  shown: (text: string) => string,
  heading?: string,
): Content {
  const rows = facts.map(({ name, value }) => [
    { text: shown(name), color: '#4a4a4a' },
    { text: value === '' ? ' ' : breakable(shown(value)) },
  ]);
  const before = heading === undefined ? 0 : 1;
  return {
    table: {
      widths: [160, '*'],
      headerRows: before,
      keepWithHeaderRows: before * Math.min(2, rows.length),
      dontBreakRows: true,
      body: [...headingRow(heading, 2, shown), ...rows],
    },
    layout: {
      hLineWidth: (line: number) => (line < before ? 0 : line === before ? 0.8 : 0.6),
      vLineWidth: () => 0,
      hLineColor: (line: number) => (line <= before || facts[line - 1 - before]?.value === '' ? INK : HAIR),
      paddingLeft: () => 0,
      paddingTop: () => 2.5,
      paddingBottom: () => 2,
    },
  };
}

/** A table whose heading rows come again on every page it runs over. */
export function tableContent(
  { columns, rows }: TableBlock,
  shown: (text: string) => string,
  heading?: string,
): Content {
  const before = heading === undefined ? 0 : 1;
  const head: TableCell[] = columns.map((column) => ({
    text: breakable(shown(column.heading)),
    bold: true,
    alignment: column.align,
    lineHeight: 1,
  }));
  const body: TableCell[][] = rows.map(({ cells, leftOut }) =>
    cells.map((cell, index) => {
      const column = columns[index];
      return {
        text: column?.code ? shown(cell).replace(/(.{32})(?=.)/g, '$1\n') : breakable(shown(cell)),
        alignment: column?.align ?? 'left',
        ...(column?.code ? { fontSize: 7 } : {}),
        ...(leftOut ? { color: '#5a5a5a' } : {}),
      };
    }),
  );
  return {
    fontSize: 8.6,
    margin: [0, 2, 0, 4],
    unbreakable: rows.length <= MOST_ROWS_TOGETHER,
    table: {
      headerRows: 1 + before,
      dontBreakRows: true,
      keepWithHeaderRows: Math.min(1, rows.length),
      widths: columns.map(({ wide, width }) => (wide ? '*' : (width ?? 'auto'))),
      body: [...headingRow(heading, columns.length, shown), head, ...body],
    },
    layout: {
      hLineWidth: (line: number) => (line < before || line === 0 ? 0 : line <= 1 + before ? 0.9 : 0.5),
      vLineWidth: () => 0,
      hLineColor: (line: number) => (line <= 1 + before ? INK : HAIR),
      paddingLeft: (column: number) => (column === 0 ? 0 : 5),
      paddingRight: (column: number) => (column === columns.length - 1 ? 0 : 5),
      paddingTop: () => 2.5,
      paddingBottom: () => 2,
    },
  };
}

/** The section's heading across the whole table. */
function headingRow(
  heading: string | undefined,
  columns: number,
  shown: (text: string) => string,
): TableCell[][] {
  if (heading === undefined) return [];
  const cell = { text: shown(heading), fontSize: 12.5, bold: true, colSpan: columns, margin: [0, 13, 0, 0] };
  return [[cell as TableCell, ...Array.from({ length: columns - 1 }, (): TableCell => '')]];
}
