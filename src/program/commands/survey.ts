import { surveyJson } from '../../core/survey/survey-json.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { surveyLines } from '../../core/text/survey-text.ts';
import { WARM_UP_REMARKS } from '../../core/text/warm-up-remarks.ts';
import { print, printJson } from '../output/print.ts';
import { type SurveyWish, surveyOfFiles } from '../platens/survey-of-files.ts';

interface SurveyOptions extends SurveyWish {
  readonly ascii?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `survey RECORDING…`: uniformity of one platen. Ends with 1 when the spread is over the limit. */
export async function survey(files: readonly string[], options: SurveyOptions): Promise<void> {
  const { opened, survey: result } = await surveyOfFiles(files, options);
  if (options.json) {
    printJson({
      sources: opened.map(({ name }) => name),
      simulated: opened.some(({ head }) => head?.simulated === true),
      ...surveyJson(result),
    });
  } else {
    const heading = opened.map(({ name, head }) =>
      neutralise(WARM_UP_REMARKS.surveyHeading(name, head?.pressName, head?.simulated === true)),
    );
    print(
      [...heading, ...surveyLines(result, { unit: options.show, ascii: options.ascii === true })].join('\n'),
    );
  }
  if (!result.withinLimit) process.exitCode = 1;
}
