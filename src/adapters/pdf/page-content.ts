import type { Content } from 'pdfmake/interfaces.js';
import type { ReportContent } from '../../core/report/ReportContent.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { REPORT_TEXT } from '../../core/text/report-text.ts';
import { breakable } from './breakable.ts';
import type { Setting } from './section-content.ts';

const WARNING = '#a3161a';
const QUIET = '#4a4a4a';

/** Title, subtitle, and in a box what nobody may overlook about simulated readings. */
export function headContent(content: ReportContent, { shown, width }: Setting): readonly Content[] {
  const { title, subtitle, simulated, reference, program, madeAt } = content;
  return [
    ...(simulated ? [simulatedBox()] : []),
    { canvas: [{ type: 'rect', x: 0, y: 0, w: width, h: 3, color: '#1a1a1a' }], margin: [0, 0, 0, 8] },
    {
      columns: [
        {
          width: '*',
          stack: [
            { text: breakable(shown(title)), fontSize: 22, bold: true, lineHeight: 1 },
            { text: breakable(shown(subtitle)), fontSize: 13, margin: [0, 2, 0, 0] },
          ],
        },
        {
          width: 190,
          alignment: 'right',
          fontSize: 8.5,
          color: QUIET,
          margin: [0, 6, 0, 0],
          stack: [shown(reference), shown(REPORT_TEXT.madeBy(program, madeAt))],
        },
      ],
    },
  ];
}

function simulatedBox(): Content {
  return {
    table: {
      widths: ['auto', '*'],
      body: [
        [
          { text: REPORT_TEXT.simulated, fontSize: 18, bold: true, color: WARNING, characterSpacing: 1.5 },
          { text: REPORT_TEXT.simulatedWhy, color: WARNING, margin: [6, 5, 0, 0] },
        ],
      ],
    },
    layout: {
      hLineWidth: () => 2,
      vLineWidth: (line: number) => (line === 1 ? 0 : 2),
      hLineColor: () => WARNING,
      vLineColor: () => WARNING,
      paddingLeft: () => 8,
      paddingTop: () => 3,
      paddingBottom: () => 3,
    },
    margin: [0, 0, 0, 12],
  };
}

/** At the head of every page: SIMULATED where it is so. */
export function pageHead({ simulated }: ReportContent): Content {
  return simulated
    ? {
        text: REPORT_TEXT.simulated,
        bold: true,
        fontSize: 11,
        color: WARNING,
        alignment: 'center',
        margin: [0, 24, 0, 0],
      }
    : '';
}

/** At the foot of every page: what it belongs to, and its number. */
export function pageFoot(
  content: ReportContent,
  at: { readonly page: number; readonly pages: number; readonly shown: (text: string) => string },
): Content {
  const { reference, subtitle } = content;
  return {
    margin: [50, 18, 50, 0],
    fontSize: 8,
    color: QUIET,
    columns: [
      {
        text: breakable(
          neutralise(at.shown([subtitle, reference].filter((part) => part !== '').join(' · ')), {
            longest: 110,
          }),
        ),
        width: '*',
      },
      { text: REPORT_TEXT.page(at.page, at.pages), width: 'auto', alignment: 'right' },
    ],
  };
}
