import { writeTextFile } from '../../adapters/files/write-text-file.ts';
import { trialReport } from '../../core/report/trial-report.ts';
import { reportPage } from '../../core/report-page/report-page.ts';
import { dwellSentences } from '../../core/text/dwell-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { REPORT_TEXT } from '../../core/text/report-text.ts';
import { VERSION } from '../command-line/version.ts';
import { print } from '../output/print.ts';
import { type GatherOptions, gatherTrial } from '../reports/gather-trial.ts';
import { outFile } from '../reports/out-file.ts';
import { pageTypeface, typefaceFiles } from '../reports/typeface.ts';

interface ReportOptions extends GatherOptions {
  readonly out: string;
  readonly paper: 'letter' | 'a4';
  readonly equipment?: readonly string[];
  readonly note?: string;
  /** True for the latest version of the recipe. */
  readonly recheck?: string | true;
  readonly show: 'F' | 'C';
}

const KINDS = { page: ['.html', '.htm'], pdf: ['.pdf'] } as const;

/** `report FILES… | --trial ID --out FILE`: the trial as a page or a PDF, from the same content. */
export async function report(files: readonly string[], options: ReportOptions): Promise<void> {
  const kind = outFile(options.out, KINDS, files);
  const gathered = await gatherTrial('report', files, options);
  const { outcome } = gathered;
  const furtherSections =
    options.recheck === undefined
      ? []
      : [
          await (await import('../reports/recheck-of-trial.ts')).recheckOfTrial(gathered, {
            ...options,
            recheck: options.recheck,
          }),
        ];
  const content = trialReport({
    ...gathered,
    equipment: options.equipment ?? [],
    note: options.note ?? null,
    furtherSections,
    unit: options.show,
    madeAt: new Date().toISOString(),
    program: `Dwellwright ${VERSION}`,
  });
  if (kind === 'page') writeTextFile(options.out, [reportPage(content, pageTypeface())]);
  else {
    const [{ reportPdf }, { writeBinaryFile }] = await Promise.all([
      import('../../adapters/pdf/report-pdf.ts'),
      import('../../adapters/files/write-binary-file.ts'),
    ]);
    const paper = options.paper === 'a4' ? 'A4' : 'LETTER';
    writeBinaryFile(options.out, await reportPdf(content, { typeface: typefaceFiles(), paper }));
  }
  print(
    [
      ...dwellSentences({ statistics: outcome.statistics, ...outcome.settings }),
      REPORT_TEXT.wrote(neutralise(options.out)),
    ].join('\n'),
  );
  if (outcome.statistics.runs === 0) process.exitCode = 1;
}
