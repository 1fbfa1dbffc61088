import type { Content, TableCell } from 'pdfmake/interfaces.js';
import type { FactsBlock, TableBlock } from '../../core/report/ReportContent.ts';

const HAIR = '#d5d5d5';
const INK = '#1a1a1a';

/** Names and values; an empty value is a line to write on. */
export function factsContent({ facts }: FactsBlock, shown: (text: string) => string): Content {
  return {
    table: {
      widths: [160, '*'],
      dontBreakRows: true,
      body: facts.map(({ name, value }) => [
        { text: shown(name), color: '#4a4a4a' },
        { text: value === '' ? ' ' : shown(value) },
      ]),
    },
    layout: {
      hLineWidth: () => 0.6,
      vLineWidth: () => 0,
      hLineColor: (line: number) => (facts[line - 1]?.value === '' ? INK : HAIR),
      paddingLeft: () => 0,
      paddingTop: () => 2.5,
      paddingBottom: () => 2,
    },
  };
}

/** A table whose heading row comes again on every page it runs over. */
export function tableContent({ columns, rows }: TableBlock, shown: (text: string) => string): Content {
  const head: TableCell[] = columns.map(({ heading, align }) => ({
    text: shown(heading),
    bold: true,
    alignment: align,
    lineHeight: 1,
  }));
  const body: TableCell[][] = rows.map(({ cells, leftOut }) =>
    cells.map((cell, index) => {
      const column = columns[index];
      return {
        text: column?.code ? shown(cell).replace(/(.{32})(?=.)/g, '$1\n') : shown(cell),
        alignment: column?.align ?? 'left',
        ...(column?.code ? { fontSize: 7 } : {}),
        ...(leftOut ? { color: '#6a6a6a' } : {}),
      };
    }),
  );
  return {
    fontSize: 8.6,
    margin: [0, 2, 0, 4],
    table: {
      headerRows: 1,
      dontBreakRows: true,
      keepWithHeaderRows: 1,
      widths: columns.map(({ wide, heading, code }) =>
        wide ? '*' : code ? 'auto' : heading.length > 12 ? 58 : 'auto',
      ),
      body: [head, ...body],
    },
    layout: {
      hLineWidth: (line: number) => (line === 0 ? 0 : line === 1 ? 1 : 0.5),
      vLineWidth: () => 0,
      hLineColor: (line: number) => (line === 1 ? INK : HAIR),
      paddingLeft: (column: number) => (column === 0 ? 0 : 6),
      paddingRight: (column: number) => (column === columns.length - 1 ? 0 : 6),
      paddingTop: () => 2.5,
      paddingBottom: () => 2,
    },
  };
}
