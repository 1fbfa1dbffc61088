import { dwellBars } from '../figure/dwell-bars.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import { commonPartSentence } from '../text/budget-text.ts';
import { DWELL_RULE_NAME, dwellLine, timerSentence } from '../text/dwell-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { recipeMadeWithText } from '../text/recipe-text.ts';
import { momentText, REPORT_TEXT } from '../text/report-text.ts';
import { secondsText, type TemperatureUnit, temperatureText } from '../text/units-text.ts';
import type { DwellRule } from '../trial/TrialResult.ts';
import type { DwellsBlock, ReportBlock, ReportSection } from './ReportContent.ts';
import type { ReportJob, TrialReportInput } from './TrialReportInput.ts';

export type DwellSectionInput = Pick<TrialReportInput, 'outcome' | 'unit'> & {
  readonly job: Pick<ReportJob, 'recipes'>;
};

const WEIGHED = ['mean', 'next-run'] as const satisfies readonly DwellRule[];

/** The dwell by the two rules of equal weight, its parts, and what to set on the press's timer. */
export function dwellSection({ outcome, job, unit }: DwellSectionInput): ReportSection {
  const { settings, statistics, chosen, dwells } = outcome;
  const input = { statistics, ...settings };
  const bars = WEIGHED.flatMap((rule) => {
    const { dwell } = dwells[rule];
    return dwell === null ? [] : [{ name: DWELL_RULE_NAME[rule], dwell }];
  });
  const timer =
    chosen.dwell === null
      ? null
      : timerSentence(chosen.dwell, { startsAt: settings.timerStartsAt, offsetS: settings.timerOffsetS });
  const blocks: readonly ReportBlock[] = [
    {
      kind: 'dwells',
      dwells: WEIGHED.map((rule) => {
        const one = asDwell(dwellLine(input, rule));
        const sure = rule === 'next-run' && dwells[rule].dwell !== null;
        return sure
          ? { ...one, worth: [REPORT_TEXT.nextRunWorth(secondsText(settings.holdS)), ...one.worth] }
          : one;
      }),
    },
    {
      kind: 'paragraphs',
      lines: [
        REPORT_TEXT.dwellMeans({
          target: temperatureText(settings.targetC, unit),
          hold: secondsText(settings.holdS),
          margin: settings.marginS > 0 ? secondsText(settings.marginS) : null,
          timerStep: secondsText(settings.timerStepS, 3),
        }),
        ...(statistics.runs > 1
          ? (['slowest', 'tolerance'] as const).map((rule) =>
              REPORT_TEXT.sentence(REPORT_TEXT.alsoRule(dwellLine(input, rule))),
            )
          : []),
        ...(outcome.budget === null ? [] : [REPORT_TEXT.commonPart(commonPartSentence(outcome.budget))]),
        ...(timer === null ? [] : [REPORT_TEXT.sentence(timer)]),
        ...job.recipes.flatMap((recipe) => recipeLinesOf(recipe, unit)),
      ],
    },
    ...(bars.length === 0
      ? []
      : [{ kind: 'figure', picture: dwellBars(bars), caption: REPORT_TEXT.dwellCaption } as const]),
  ];
  return { heading: REPORT_TEXT.dwellHeading, blocks };
}

/** "common mean rule: 174 s; about half …" in its three parts. */
function asDwell(line: string): DwellsBlock['dwells'][number] {
  const [first, ...worth] = line.split('; ');
  const at = (first as string).indexOf(': ');
  const value = (first as string).slice(at + 2);
  return {
    name: (first as string).slice(0, at),
    value: /^\d/.test(value) ? value : '—',
    worth: /^\d/.test(value) ? worth : [value, ...worth],
  };
}

/** A recipe that rests on this trial. */
function recipeLinesOf(recipe: Recipe, unit: TemperatureUnit): readonly string[] {
  const accepted = REPORT_TEXT.acceptedAs({
    version: recipe.version,
    dwell: secondsText(recipe.dwellS, 3),
    rule: DWELL_RULE_NAME[recipe.rule],
    reason: recipe.ruleReason === null ? null : neutralise(recipe.ruleReason),
    by: neutralise(recipe.initials),
    at: momentText(neutralise(recipe.acceptedAt)),
    provisional: recipe.provisional,
  });
  return [accepted, recipeMadeWithText(recipe, unit)];
}
