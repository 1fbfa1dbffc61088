import { writeTextFile } from '../../adapters/files/write-text-file.ts';
import { reportPage } from '../../core/report-page/report-page.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { REPORT_TEXT } from '../../core/text/report-text.ts';
import { VERSION } from '../command-line/version.ts';
import { print } from '../output/print.ts';
import { outFile } from '../reports/out-file.ts';
import { type ReportWish, reportContent } from '../reports/report-content.ts';
import { pageTypeface, typefaceFiles } from '../reports/typeface.ts';

interface ReportOptions extends ReportWish {
  readonly out: string;
  readonly paper: 'letter' | 'a4';
}

const KINDS = { page: ['.html', '.htm'], pdf: ['.pdf'] } as const;

/** `report …`: a trial, a re-check, two presses compared or a bonded lot, as a page or a PDF of the same content. */
export async function report(files: readonly string[], options: ReportOptions): Promise<void> {
  const inputs = [...files, ...(options.first ?? []), ...(options.second ?? [])];
  const kind = outFile(options.out, KINDS, inputs);
  const stamp = { madeAt: new Date().toISOString(), program: `Dwellwright ${VERSION}` };
  const content = await reportContent(files, options, stamp);
  if (kind === 'page') writeTextFile(options.out, [reportPage(content, pageTypeface())]);
  else {
    const [{ reportPdf }, { writeBinaryFile }] = await Promise.all([
      import('../../adapters/pdf/report-pdf.ts'),
      import('../../adapters/files/write-binary-file.ts'),
    ]);
    const paper = options.paper === 'a4' ? 'A4' : 'LETTER';
    writeBinaryFile(options.out, await reportPdf(content, { typeface: typefaceFiles(), paper }));
  }
  print(REPORT_TEXT.wrote(neutralise(options.out)));
}
