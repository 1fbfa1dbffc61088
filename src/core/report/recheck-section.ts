import type { Recheck, RunRecheck } from '../recheck/RecheckResult.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import { neutralise } from '../text/neutralise.ts';
import { recheckReasonText } from '../text/recheck-reason-text.ts';
import { RECHECK_REPORT_TEXT } from '../text/recheck-report-text.ts';
import { changedText, recheckSummaryLines } from '../text/recheck-text.ts';
import { momentText, REPORT_TEXT } from '../text/report-text.ts';
import { numberText, type TemperatureUnit } from '../text/units-text.ts';
import type { ReportSection, TableBlock } from './ReportContent.ts';

/** A recipe held against runs: the verdict with why, and a row for each run. */
export function recheckSection(recipe: Recipe, result: Recheck, unit: TemperatureUnit): ReportSection {
  return {
    heading: REPORT_TEXT.recheckHeading,
    blocks: [
      {
        kind: 'paragraphs',
        lines: recheckSummaryLines(recipe, result, unit).map(REPORT_TEXT.sentence),
      },
      recheckTable(result, unit),
      { kind: 'paragraphs', lines: [oldAndNew(result)] },
    ],
  };
}

/** One row a run: soak time now, as it was stored, against the recipe, and what stands against it; `madeAt` by position where known. */
export function recheckTable(
  { runs }: Recheck,
  unit: TemperatureUnit,
  madeAt: readonly (string | null)[] = [],
): TableBlock {
  const dated = madeAt.some((one) => one !== null);
  return {
    kind: 'table',
    columns: [
      { heading: REPORT_TEXT.run, align: 'right' },
      ...(dated ? [{ heading: RECHECK_REPORT_TEXT.made, align: 'left', width: 52 } as const] : []),
      { heading: RECHECK_REPORT_TEXT.now, align: 'right', width: 34 },
      { heading: RECHECK_REPORT_TEXT.stored, align: 'left', width: 62 },
      { heading: REPORT_TEXT.inBand, align: 'left', width: 38 },
      { heading: REPORT_TEXT.holdAtDwell, align: 'right', width: 44 },
      { heading: RECHECK_REPORT_TEXT.why, align: 'left', wide: true },
    ],
    rows: runs.map((one, index) => ({
      cells: [
        String(index + 1),
        ...(dated ? [dayOf(madeAt[index] ?? null)] : []),
        numberText(one.run.result.soakTimeS, 2),
        storedText(one),
        one.insideBand === null ? '—' : REPORT_TEXT.yesNo(one.insideBand),
        numberText(one.heldAtDwellS, 1),
        whyText(one, unit),
      ],
      leftOut: !one.comparable,
    })),
  };
}

/** How many stored runs give the same now, in a sentence. */
export function oldAndNew({ runs }: Recheck): string {
  const stored = runs.filter(({ before }) => before !== null);
  const changed = stored.filter((one) => changedText(one) !== null);
  return changed.length === 0
    ? RECHECK_REPORT_TEXT.alike(stored.length)
    : RECHECK_REPORT_TEXT.differ(changed.length, stored.length);
}

const dayOf = (iso: string | null): string => (iso === null ? '—' : momentText(neutralise(iso)));

function storedText({ before }: RunRecheck): string {
  return before === null
    ? RECHECK_REPORT_TEXT.notStored
    : RECHECK_REPORT_TEXT.storedOf(numberText(before.soakTimeS, 2), before.verdict, before.ruleVersion);
}

function whyText(one: RunRecheck, unit: TemperatureUnit): string {
  const changed = changedText(one);
  const said = [
    ...one.reasons.map((reason) => recheckReasonText(reason, unit)),
    ...(changed === null ? [] : [REPORT_TEXT.sentence(changed)]),
  ];
  return said.join(' ') || '—';
}
