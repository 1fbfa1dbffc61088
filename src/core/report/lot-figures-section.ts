import type { CycleFlag } from '../bonding/BondingCycle.ts';
import { heldChart } from '../figure/held-chart.ts';
import { type LotChartInput, lotChart } from '../figure/lot-chart.ts';
import { lotDifferenceChart } from '../figure/lot-difference-chart.ts';
import { LOT_TEXT } from '../text/lot-text.ts';
import type { LotCycle, LotRecipe, LotReportInput } from './LotReportInput.ts';
import { isClean } from './lot-section.ts';
import type { ReportBlock, ReportSection } from './ReportContent.ts';

/** This many cycles with something noticed get a picture of their own. */
const MOST_OWN_PICTURES = 3;

/** What a picture of the bond line shows. */
const OF_BOND_LINE: ReadonlySet<CycleFlag> = new Set([
  'hold-not-verified',
  'outside-recipe-band',
  'peak-above-limit',
]);

/** Bond lines against the band of the recipe's own runs, a picture for each version of the recipe; then those to be looked at, one by one. */
export function lotFiguresSection(input: LotReportInput): ReportSection {
  const blocks: ReportBlock[] = input.recipes.flatMap((recipe) => ofRecipe(input, recipe));
  if (blocks.length === 0) blocks.push({ kind: 'paragraphs', lines: [LOT_TEXT.noTraces] });
  const held = lotHeldChart(input);
  if (held !== null) blocks.push({ kind: 'figure', picture: held, caption: LOT_TEXT.heldCaption });
  return { heading: LOT_TEXT.picturesHeading, blocks };
}

/** Time closed of each cycle; null under two cycles. */
export function lotHeldChart({ cycles }: Pick<LotReportInput, 'cycles'>) {
  return heldChart({
    cycles: cycles.map((one) => ({
      number: one.number,
      clean: isClean(one),
      heldS: one.cycle.dwellHeldS,
      wantedS: one.cycle.dwellWantedS,
    })),
    simulated: cycles.some(({ cycle }) => cycle.simulated),
  });
}

function ofRecipe(input: LotReportInput, recipe: LotRecipe): readonly ReportBlock[] {
  const cycles = input.cycles.filter(({ cycle }) => cycle.recipeVersion === recipe.version);
  const all = lotPicture(input, recipe, cycles);
  const apart = lotDifferences(input, recipe, cycles);
  if (all === null) return [];
  const noticed = cycles.filter(
    ({ cycle, bondLine }) => bondLine.length > 0 && cycle.flags.some((flag) => OF_BOND_LINE.has(flag)),
  );
  const own = cycles.length === 1 ? [] : noticed.slice(0, MOST_OWN_PICTURES);
  const further = cycles.length === 1 ? 0 : noticed.length - own.length;
  return [
    { kind: 'figure', picture: all, caption: LOT_TEXT.lotCaption(recipe.band.length > 1) },
    ...(apart === null
      ? []
      : [{ kind: 'figure', picture: apart, caption: LOT_TEXT.differenceCaption } as const]),
    ...own.flatMap((one): readonly ReportBlock[] => {
      const picture = lotDifferences(input, recipe, [one]) ?? lotPicture(input, recipe, [one]);
      return picture === null
        ? []
        : [{ kind: 'figure', picture, caption: LOT_TEXT.oneCaption(one.number, one.cycle) }];
    }),
    ...(further === 0 ? [] : [{ kind: 'paragraphs', lines: [LOT_TEXT.furtherFlagged(further)] } as const]),
  ];
}

/** Some cycles of one version of the recipe over its band; null where no bond line was measured. */
export function lotPicture(
  setting: Pick<LotReportInput, 'unit'>,
  recipe: LotRecipe,
  cycles: readonly LotCycle[],
) {
  const input = chartInput(setting, recipe, cycles);
  return input === null ? null : lotChart(input);
}

/** The same cycles less the middle of the band; null without a band too. */
export function lotDifferences(
  setting: Pick<LotReportInput, 'unit'>,
  recipe: LotRecipe,
  cycles: readonly LotCycle[],
) {
  const input = chartInput(setting, recipe, cycles);
  return input === null ? null : lotDifferenceChart(input);
}

function chartInput(
  { unit }: Pick<LotReportInput, 'unit'>,
  { band }: LotRecipe,
  cycles: readonly LotCycle[],
): LotChartInput | null {
  const first = cycles[0];
  if (first === undefined) return null;
  return {
    cycles: cycles.map((one) => ({
      label: String(one.number),
      clean: isClean(one),
      points: one.bondLine,
    })),
    band,
    targetC: first.cycle.targetC,
    dwellS: first.cycle.dwellWantedS,
    unit,
    simulated: cycles.some(({ cycle }) => cycle.simulated),
  };
}
