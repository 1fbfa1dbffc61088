import pdfmake from 'pdfmake';
import type { TDocumentDefinitions } from 'pdfmake/interfaces.js';
import type { ReportContent } from '../../core/report/ReportContent.ts';
import { REPORT_TEXT } from '../../core/text/report-text.ts';
import { createShownText } from './create-shown-text.ts';
import { headContent, pageFoot, pageHead } from './page-content.ts';
import { sectionContent } from './section-content.ts';
import type { TypefaceFiles } from './TypefaceFiles.ts';

export interface ReportPdfOptions {
  readonly typeface: TypefaceFiles;
  readonly paper: 'LETTER' | 'A4';
}

/** Margins in points: left, top, right, bottom. */
const MARGINS: [number, number, number, number] = [50, 54, 50, 56];
const PAPER_WIDTH = { LETTER: 612, A4: 595.28 } as const;

/** The report as a PDF: same content as the page, typeface embedded, page numbers, nothing fetched. */
export async function reportPdf(
  content: ReportContent,
  { typeface, paper }: ReportPdfOptions,
): Promise<Uint8Array> {
  const shown = createShownText(typeface.regular);
  const width = PAPER_WIDTH[paper] - MARGINS[0] - MARGINS[2];
  const files = new Set([typeface.regular, typeface.bold]);
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path: string) => files.has(path));
  pdfmake.setFonts({
    [typeface.name]: {
      normal: typeface.regular,
      bold: typeface.bold,
      italics: typeface.regular,
      bolditalics: typeface.bold,
    },
  });
  const definition: TDocumentDefinitions = {
    pageSize: paper,
    pageMargins: MARGINS,
    language: 'en',
    info: {
      title: shown(`${content.title}: ${content.subtitle}`),
      producer: shown(content.program),
      creator: shown(content.program),
      creationDate: new Date(content.madeAt),
      ...(content.simulated ? { keywords: REPORT_TEXT.simulated } : {}),
    },
    defaultStyle: { font: typeface.name, fontSize: 9.5, lineHeight: 1.15, color: '#1a1a1a' },
    header: () => pageHead(content),
    footer: (page, pages) => pageFoot(content, { page, pages, shown }),
    content: [
      ...headContent(content, { shown, width }),
      ...content.sections.flatMap((section) => sectionContent(section, { shown, width })),
    ],
  };
  return pdfmake.createPdf(definition).getBuffer();
}
