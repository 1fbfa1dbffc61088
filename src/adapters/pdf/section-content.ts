import type { Content, TableCell } from 'pdfmake/interfaces.js';
import type { Picture, Shape } from '../../core/figure/Picture.ts';
import { pictureSvg } from '../../core/figure/picture-svg.ts';
import type { DwellsBlock, ReportBlock, ReportSection } from '../../core/report/ReportContent.ts';
import { REPORT_TEXT } from '../../core/text/report-text.ts';
import { breakable } from './breakable.ts';
import { factsContent, tableContent } from './table-content.ts';

export interface Setting {
  readonly shown: (text: string) => string;
  /** Width between the margins, points. */
  readonly width: number;
}

/** Points; keeps three charts on one page. */
const MOST_PICTURE_WIDTH = 476;

const QUIET = '#4a4a4a';

/**
 * One section of a report. Where it begins with a table, the heading is the table's first heading row and comes
 * again on the next page; else it is kept together with what follows.
 */
export function sectionContent({ heading, blocks }: ReportSection, setting: Setting): readonly Content[] {
  const { shown, width } = setting;
  const [first, ...others] = blocks;
  const rest = others.flatMap((block) => blockContent(block, setting));
  if (first?.kind === 'table') return [tableContent(first, shown, heading), ...rest];
  if (first?.kind === 'facts') return [factsContent(first, shown, heading), ...rest];
  const [follows, ...more] = first === undefined ? [] : blockContent(first, setting);
  const head: Content[] = [
    { text: shown(heading), fontSize: 12.5, bold: true, margin: [0, 16, 0, 2] },
    { canvas: [{ type: 'line', x1: 0, y1: 0, x2: width, y2: 0, lineWidth: 0.8 }], margin: [0, 0, 0, 5] },
  ];
  return [
    { unbreakable: true, stack: [...head, ...(follows === undefined ? [] : [follows])] },
    ...more,
    ...rest,
  ];
}

function blockContent(block: ReportBlock, setting: Setting): readonly Content[] {
  const { shown, width } = setting;
  switch (block.kind) {
    case 'facts':
      return [factsContent(block, shown)];
    case 'table':
      return [tableContent(block, shown)];
    case 'dwells':
      return [dwellsContent(block, shown)];
    case 'paragraphs':
      return block.lines.map((line) => ({ text: breakable(shown(line)), margin: [0, 2, 0, 2] }));
    case 'list':
      return [
        {
          ul: block.items.map((item) => ({ text: breakable(shown(item)), margin: [0, 1, 0, 1] })),
          margin: [0, 2, 0, 2],
        },
      ];
    case 'figure':
      return [
        {
          unbreakable: true,
          margin: [0, 6, 0, 6],
          stack: [
            {
              svg: pictureSvg(shownPicture(block.picture, shown)),
              width: Math.min(width, MOST_PICTURE_WIDTH),
            },
            { text: shown(block.caption), fontSize: 8.5, color: QUIET, margin: [0, 2, 0, 0] },
          ],
        },
      ];
    case 'signatures':
      return [
        {
          columns: block.roles.map((role) => signatureContent(shown(role), (width - 40) / 3)),
          columnGap: 20,
          unbreakable: true,
        },
      ];
  }
}

/** Boxes of one size side by side: cells of one table row, with narrow empty cells between them. */
function dwellsContent({ dwells }: DwellsBlock, shown: (text: string) => string): Content {
  const boxes = dwells.map(
    ({ name, value, worth }): TableCell => ({
      stack: [
        { text: shown(capital(name)), bold: true },
        { text: shown(value), fontSize: 24, bold: true, lineHeight: 1.05 },
        ...worth.map(
          (line): Content => ({ text: shown(capital(line)), fontSize: 8.8, margin: [0, 1, 0, 0] }),
        ),
      ],
      margin: [5, 3, 5, 4],
    }),
  );
  const gap: TableCell = { text: '', border: [false, false, false, false] };
  const cells = boxes.flatMap((box, index) => (index === 0 ? [box] : [{ ...gap }, box]));
  return {
    margin: [0, 4, 0, 6],
    table: {
      widths: cells.map((_, index) => (index % 2 === 0 ? '*' : 4)),
      dontBreakRows: true,
      body: [cells],
    },
    layout: { hLineWidth: () => 1.1, vLineWidth: () => 1.1 },
  };
}

function signatureContent(role: string, width: number): Content {
  // A new one each time: the layout writes into what it is given.
  const line = (): Content => ({
    canvas: [{ type: 'line', x1: 0, y1: 28, x2: width, y2: 28, lineWidth: 0.7 }],
    margin: [0, 0, 0, 2],
  });
  return {
    stack: [
      { text: role, bold: true },
      line(),
      { text: REPORT_TEXT.signatureLine, fontSize: 8.5, color: QUIET },
      line(),
      { text: REPORT_TEXT.dateLine, fontSize: 8.5, color: QUIET },
    ],
  };
}

/** Texts inside a picture, fit for the typeface. */
function shownPicture(picture: Picture, shown: (text: string) => string): Picture {
  const fitted = <One extends Shape>(shape: One): One =>
    shape.kind === 'text' ? { ...shape, text: shown(shape.text) } : shape;
  return {
    ...picture,
    shapes: picture.shapes.map((shape) =>
      shape.kind === 'clipped' ? { ...shape, shapes: shape.shapes.map(fitted) } : fitted(shape),
    ),
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
