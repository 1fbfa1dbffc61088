import { writeTextFile } from '../../adapters/files/write-text-file.ts';
import type { ReportContent } from '../../core/report/ReportContent.ts';
import { reportPage } from '../../core/report-page/report-page.ts';
import { dwellSentences } from '../../core/text/dwell-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { REPORT_TEXT } from '../../core/text/report-text.ts';
import { VERSION } from '../command-line/version.ts';
import { OptionError } from '../options/OptionError.ts';
import { print } from '../output/print.ts';
import type { ComparisonOptions } from '../reports/comparison-of-warm-ups.ts';
import type { GatherOptions } from '../reports/gather-trial.ts';
import { outFile } from '../reports/out-file.ts';
import type { TransferOptions } from '../reports/transfer-of-trials.ts';
import { pageTypeface, typefaceFiles } from '../reports/typeface.ts';

interface ReportOptions extends GatherOptions, ComparisonOptions, TransferOptions {
  readonly out: string;
  readonly paper: 'letter' | 'a4';
  readonly equipment?: readonly string[];
  readonly note?: string;
  /** True for the latest version of the recipe. */
  readonly recheck?: string | true;
  readonly show: 'F' | 'C';
}

const KINDS = { page: ['.html', '.htm'], pdf: ['.pdf'] } as const;

/** `report …`: a trial, or with --first and --second two presses compared, as a page or a PDF of the same content. */
export async function report(files: readonly string[], options: ReportOptions): Promise<void> {
  const inputs = [...files, ...(options.first ?? []), ...(options.second ?? [])];
  const kind = outFile(options.out, KINDS, inputs);
  const compared = options.first !== undefined || options.second !== undefined;
  if (compared && (files.length > 0 || options.trial !== undefined)) {
    throw new OptionError(
      'report: came both a trial and two sides to compare',
      'Give files or --trial, or --first and --second',
    );
  }
  const stamp = { madeAt: new Date().toISOString(), program: `Dwellwright ${VERSION}` };
  const content = compared ? await comparison(options, stamp) : await trial(files, options, stamp);
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

type Stamp = Pick<ReportContent, 'madeAt' | 'program'>;

/** A trial's content; prints its dwell. Exit code 1 when no run counts. */
async function trial(files: readonly string[], options: ReportOptions, stamp: Stamp): Promise<ReportContent> {
  const [{ gatherTrial }, { trialReport }] = await Promise.all([
    import('../reports/gather-trial.ts'),
    import('../../core/report/trial-report.ts'),
  ]);
  const gathered = await gatherTrial('report', files, options);
  const furtherSections = [];
  if (options.recheck !== undefined) {
    const { recheckOfTrial } = await import('../reports/recheck-of-trial.ts');
    furtherSections.push(await recheckOfTrial(gathered, { ...options, recheck: options.recheck }));
  }
  if (options.against !== undefined) {
    const { transferOfTrials } = await import('../reports/transfer-of-trials.ts');
    furtherSections.push(await transferOfTrials(gathered, options, stamp.madeAt));
  }
  const { statistics, settings } = gathered.outcome;
  print(dwellSentences({ statistics, ...settings }).join('\n'));
  if (statistics.runs === 0) process.exitCode = 1;
  return trialReport({
    ...gathered,
    ...stamp,
    equipment: options.equipment ?? [],
    note: options.note ?? null,
    furtherSections,
    unit: options.show,
  });
}

async function comparison(options: ReportOptions, stamp: Stamp): Promise<ReportContent> {
  const [{ comparisonOfWarmUps }, { comparisonReport }] = await Promise.all([
    import('../reports/comparison-of-warm-ups.ts'),
    import('../../core/report/comparison-report.ts'),
  ]);
  const gathered = await comparisonOfWarmUps(options);
  return comparisonReport({ ...gathered, ...stamp, note: options.note ?? null, unit: options.show });
}
