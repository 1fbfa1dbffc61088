import type { ReportContent } from '../../core/report/ReportContent.ts';
import { dwellSentences } from '../../core/text/dwell-text.ts';
import { LOT_TEXT } from '../../core/text/lot-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { SURVEY_REPORT_TEXT } from '../../core/text/survey-report-text.ts';
import { OptionError } from '../options/OptionError.ts';
import { print } from '../output/print.ts';
import { comparesSides } from '../platens/compares-sides.ts';
import type { ComparisonOptions } from './comparison-of-warm-ups.ts';
import type { LotOptions } from './gather-lot.ts';
import type { SurveyChoice } from './gather-survey.ts';
import type { GatherOptions } from './gather-trial.ts';
import type { TransferOptions } from './transfer-of-trials.ts';

export interface ReportWish
  extends GatherOptions,
    ComparisonOptions,
    TransferOptions,
    LotOptions,
    SurveyChoice {
  readonly equipment?: readonly string[];
  readonly note?: string;
  /** True for the latest version of the recipe. */
  readonly recheck?: string | true;
  /** Re-check: dwell at these targets too. */
  readonly targets?: readonly string[];
  /** Name of a bonded lot. */
  readonly lot?: string;
  /** The files are recordings of a platen survey. */
  readonly survey?: boolean;
  readonly show: 'F' | 'C';
}

/** When and by what a report is made. */
export type Stamp = Pick<ReportContent, 'madeAt' | 'program'>;

/** The report that the options ask for: two presses compared, a bonded lot, a platen survey, a re-check, or a trial. Refuses two at once. */
export function reportContent(
  files: readonly string[],
  options: ReportWish,
  stamp: Stamp,
): Promise<ReportContent> {
  const compared = comparesSides(options);
  const ofTrial = files.length > 0 || options.trial !== undefined;
  if (compared && ofTrial) {
    throw new OptionError(
      'report: came both a trial and two sides to compare',
      'Give files or --trial, or --first and --second',
    );
  }
  if (options.lot !== undefined && (compared || ofTrial || options.recheck !== undefined)) {
    throw new OptionError(
      'report: came both --lot and something else to report',
      'Make a report for each: --lot takes --assembly, --press, --from, --to, --cycles and --recipe-version',
    );
  }
  if (compared) return comparison(options, stamp);
  if (options.lot !== undefined) return lot(options.lot, options, stamp);
  refuseLotOptions(options);
  if (options.survey === true) return survey(files, options, stamp);
  if (options.recheck !== undefined && !ofTrial) return recheck(options.recheck, options, stamp);
  return trial(files, options, stamp);
}

/** Options that choose cycles are never ignored without a word. */
function refuseLotOptions({ cycles, from, to, recipeVersion }: ReportWish): void {
  if ([cycles, from, to, recipeVersion].every((one) => one === undefined)) return;
  throw new OptionError(
    'report: --cycles, --from, --to and --recipe-version choose cycles of a bonded lot, but no --lot came',
    'Add --lot NAME, such as --lot "WB-212 of March 2"',
  );
}

/** A trial's content; prints its dwell. Exit code 1 when no run counts. */
async function trial(files: readonly string[], options: ReportWish, stamp: Stamp): Promise<ReportContent> {
  const [{ gatherTrial }, { trialReport }] = await Promise.all([
    import('./gather-trial.ts'),
    import('../../core/report/trial-report.ts'),
  ]);
  const gathered = await gatherTrial('report', files, options);
  const furtherSections = [];
  if (options.recheck !== undefined) {
    const { recheckOfTrial } = await import('./recheck-of-trial.ts');
    furtherSections.push(await recheckOfTrial(gathered, { ...options, recheck: options.recheck }));
  }
  if (options.against !== undefined) {
    const [{ transferOfTrials }, { transferSection }] = await Promise.all([
      import('./transfer-of-trials.ts'),
      import('../../core/report/transfer-section.ts'),
    ]);
    const { comparison: trials, presses, setting } = await transferOfTrials(gathered, options, stamp.madeAt);
    furtherSections.push(transferSection(trials, presses, setting));
  }
  const { statistics, settings } = gathered.outcome;
  print(dwellSentences({ statistics, ...settings }).join('\n'));
  if (statistics.runs === 0) process.exitCode = 1;
  return trialReport({ ...gathered, ...stamp, ...shared(options), furtherSections });
}

async function comparison(options: ReportWish, stamp: Stamp): Promise<ReportContent> {
  const [{ comparisonOfWarmUps }, { comparisonReport }] = await Promise.all([
    import('./comparison-of-warm-ups.ts'),
    import('../../core/report/comparison-report.ts'),
  ]);
  return comparisonReport({ ...(await comparisonOfWarmUps(options)), ...stamp, ...shared(options) });
}

/** A recipe held against all runs of its store; prints the verdict. Exit code 1 where it does not hold or nothing is shown. */
async function recheck(
  version: string | true,
  options: ReportWish,
  { madeAt: reportedAt, program }: Stamp,
): Promise<ReportContent> {
  const [{ gatherRecheck }, { recheckReport }, { recheckSummaryLines }] = await Promise.all([
    import('./gather-recheck.ts'),
    import('../../core/report/recheck-report.ts'),
    import('../../core/text/recheck-text.ts'),
  ]);
  const gathered = await gatherRecheck({ ...options, ...(version === true ? {} : { version }) });
  const { recipe, result } = gathered;
  print(recheckSummaryLines(recipe, result, options.show).join('\n'));
  if (result.verdict !== 'holds') process.exitCode = 1;
  return recheckReport({ ...gathered, ...shared(options), reportedAt, program });
}

/** A platen survey's content. Exit code 1 where the spread is over the limit. */
async function survey(files: readonly string[], options: ReportWish, stamp: Stamp): Promise<ReportContent> {
  if (files.length === 0 || options.trial !== undefined)
    throw new OptionError(
      'report --survey: no recording named',
      'Name the recordings of one platen: dwellwright report FILE --survey --out survey.pdf',
    );
  const [{ gatherSurvey }, { surveyReport }] = await Promise.all([
    import('./gather-survey.ts'),
    import('../../core/report/survey-report.ts'),
  ]);
  const gathered = await gatherSurvey(files, options);
  print(SURVEY_REPORT_TEXT.verdict(gathered.survey, options.show));
  if (!gathered.survey.withinLimit) process.exitCode = 1;
  return surveyReport({ ...gathered, ...stamp, ...shared(options) });
}

/** A bonded lot's content; prints how many cycles have nothing noticed. Exit code 1 where one is to be looked at. */
async function lot(name: string, options: ReportWish, stamp: Stamp): Promise<ReportContent> {
  const [{ gatherLot }, { lotReport }, { isClean }] = await Promise.all([
    import('./gather-lot.ts'),
    import('../../core/report/lot-report.ts'),
    import('../../core/report/lot-section.ts'),
  ]);
  if (neutralise(name).trim() === '')
    throw new OptionError('--lot: came no name', 'Name the lot as the job calls it, such as --lot L-2041');
  const gathered = await gatherLot(options);
  const clean = gathered.cycles.filter(isClean).length;
  print(LOT_TEXT.countLine({ all: gathered.cycles.length, clean }));
  if (clean < gathered.cycles.length) process.exitCode = 1;
  return lotReport({ ...gathered, ...stamp, ...shared(options), lot: name });
}

const shared = ({ equipment, note, show }: ReportWish) => ({
  equipment: equipment ?? [],
  note: note ?? null,
  unit: show,
});
