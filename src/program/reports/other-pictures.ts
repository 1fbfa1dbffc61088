import type { Picture } from '../../core/figure/Picture.ts';
import { NOTHING_TO_DRAW } from '../../core/text/nothing-to-draw.ts';
import type { TemperatureUnit } from '../../core/text/units-text.ts';
import { OptionError } from '../options/OptionError.ts';
import { withStore } from '../options/with-store.ts';
import type { RecheckWish } from '../recheck/recheck-recipe.ts';
import type { LotOptions } from './gather-lot.ts';
import type { SurveyChoice } from './gather-survey.ts';

export const OTHER_VIEWS = ['survey', 'recheck', 'what-if', 'lot', 'difference', 'closed'] as const;
export type OtherView = (typeof OTHER_VIEWS)[number];

export type OtherPictureOptions = RecheckWish &
  LotOptions &
  SurveyChoice & { readonly recheck?: string | true; readonly show: TemperatureUnit };

/** A picture of a platen survey, of a recipe held against runs, of dwell against target, or of a bonded lot. */
export async function otherPicture(
  view: OtherView,
  files: readonly string[],
  options: OtherPictureOptions,
): Promise<Picture> {
  const drawn = await PICTURES[view](files, options);
  if (drawn !== null) return drawn;
  throw new OptionError(
    `chart: nothing to draw in the view "${view}"`,
    NOTHING_TO_DRAW[view],
    'nothing-to-draw',
  );
}

const PICTURES: Readonly<
  Record<OtherView, (files: readonly string[], options: OtherPictureOptions) => Promise<Picture | null>>
> = {
  survey: async (files, options) => {
    if (files.length === 0)
      throw new OptionError(
        'chart: --view survey needs a recording',
        'Name one: dwellwright chart FILE --view survey',
      );
    const [{ gatherSurvey }, { surveyMap }] = await Promise.all([
      import('./gather-survey.ts'),
      import('../../core/figure/survey-map.ts'),
    ]);
    const { survey, simulated } = await gatherSurvey(files, options);
    return surveyMap({ survey, simulated, unit: options.show });
  },
  recheck: async (files, options) => {
    const [{ recipe, result, simulated }, { recheckChart }] = await Promise.all([
      rechecked(files, options),
      import('../../core/figure/recheck-chart.ts'),
    ]);
    return recheckChart({ result, dwellS: recipe.dwellS, simulated });
  },
  'what-if': async (files, options) => {
    if ((options.targets ?? []).length < 2)
      throw new OptionError(
        'chart: --view what-if needs two targets or more',
        'Name them: --targets 330F,340F,350F,360F',
      );
    const [{ byTarget, simulated }, { whatIfChart }] = await Promise.all([
      rechecked(files, options),
      import('../../core/figure/what-if-chart.ts'),
    ]);
    return whatIfChart({ rows: byTarget, simulated, unit: options.show });
  },
  lot: (files, options) => ofLot(files, options, 'lot'),
  difference: (files, options) => ofLot(files, options, 'difference'),
  closed: async (files, options) => {
    refuseFiles(files, 'closed');
    const [{ gatherLot }, { lotHeldChart }] = await Promise.all([
      import('./gather-lot.ts'),
      import('../../core/report/lot-figures-section.ts'),
    ]);
    return lotHeldChart(await gatherLot(options));
  },
};

/** Cycles of the latest version of the recipe among those chosen. */
async function ofLot(
  files: readonly string[],
  options: OtherPictureOptions,
  view: 'lot' | 'difference',
): Promise<Picture | null> {
  refuseFiles(files, view);
  const [{ gatherLot }, { lotDifferences, lotPicture }] = await Promise.all([
    import('./gather-lot.ts'),
    import('../../core/report/lot-figures-section.ts'),
  ]);
  const { cycles, recipes } = await gatherLot(options);
  const latest = recipes.at(-1);
  if (latest === undefined) return null;
  const own = cycles.filter(({ cycle }) => cycle.recipeVersion === latest.version);
  return (view === 'lot' ? lotPicture : lotDifferences)({ unit: options.show }, latest, own);
}

function refuseFiles(files: readonly string[], view: OtherView): void {
  if (files.length === 0) return;
  throw new OptionError(
    `chart: --view ${view} takes logged cycles, but files came`,
    'Leave the files out; choose with --assembly, --press, --from, --to and --cycles',
  );
}

/** The recipe of the store held against the files' runs, or all its own there. */
function rechecked(files: readonly string[], { recheck, ...options }: OtherPictureOptions) {
  return withStore(options, async (store) => {
    const { recheckRecipe } = await import('../recheck/recheck-recipe.ts');
    const version = typeof recheck === 'string' ? { version: recheck } : {};
    const checked = await recheckRecipe(store, files, { ...options, ...version });
    const sources = new Set(checked.gathered.runs.map(({ run }) => run.source));
    const simulated =
      checked.recipe.simulated || [...sources].some((name) => store.recording(name)?.head.simulated === true);
    return { ...checked, simulated };
  });
}
