import { LOT_TEXT } from '../text/lot-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { dataSection } from './data-section.ts';
import { equipmentSection } from './equipment-section.ts';
import type { LotReportInput } from './LotReportInput.ts';
import { lotCyclesSection, noticedSection } from './lot-cycles-section.ts';
import { lotFiguresSection } from './lot-figures-section.ts';
import { lotSection } from './lot-section.ts';
import type { ReportContent, ReportSection } from './ReportContent.ts';
import { recipeFacts } from './recipe-facts.ts';
import { cautionsSection, signaturesSection } from './standing-sections.ts';

/**
 * Report of a bonded lot, for a customer: whether every closing kept the recipe, which did not, the recipe and what it
 * rests on, every cycle, bond lines against the recipe's own runs, equipment, checks to be written in, data. The clock
 * is an argument; text of people and readers may come as it is.
 */
export function lotReport(input: LotReportInput): ReportContent {
  const { cycles, recordings } = input;
  const short = (text: string) => neutralise(text, { longest: 120 });
  return {
    title: LOT_TEXT.title,
    subtitle: LOT_TEXT.subtitle(short(input.lot), short(input.assemblyName), short(input.pressName)),
    simulated: cycles.some(({ cycle }) => cycle.simulated),
    reference: LOT_TEXT.reference(short(input.lot)),
    madeAt: input.madeAt,
    program: input.program,
    sections: [
      lotSection(input),
      ...recipeSections(input),
      lotCyclesSection(input),
      noticedSection(input),
      lotFiguresSection(input),
      checksSection(),
      equipmentSection({ ...input, targetC: cycles[0]?.cycle.targetC ?? 0 }),
      cautionsSection('checks'),
      dataSection({
        recordings,
        ruleVersions: input.recipes.flatMap(({ recipe }) => recipe?.runRuleVersion ?? []),
        program: input.program,
        further: {
          facts: [{ name: LOT_TEXT.cycleRecords, value: input.cyclesSha256 }],
          lines: [LOT_TEXT.cycleRecordsMean, ...(recordings.length === 0 ? [LOT_TEXT.noRecordings] : [])],
        },
      }),
      signaturesSection(),
    ],
  };
}

function recipeSections({ recipes, unit }: LotReportInput): readonly ReportSection[] {
  return recipes.map(({ version, recipe }) => ({
    heading: LOT_TEXT.recipeHeading(version),
    blocks:
      recipe === null
        ? [{ kind: 'paragraphs', lines: [LOT_TEXT.recipeUnknown(version)] }]
        : [recipeFacts(recipe, unit)],
  }));
}

/** The proof of a bond is in the part: room for what the checks after cooling found. */
function checksSection(): ReportSection {
  return {
    heading: LOT_TEXT.checksHeading,
    blocks: [
      { kind: 'facts', facts: LOT_TEXT.checks.map((name) => ({ name, value: '' })) },
      { kind: 'paragraphs', lines: [LOT_TEXT.checksMean] },
    ],
  };
}
