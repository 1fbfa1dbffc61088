import { outcomeJson } from '../../core/result/outcome-json.ts';
import { recheckJson } from '../../core/result/recheck-json.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { dwellTableLines } from '../../core/text/dwell-table-text.ts';
import { dwellSentences } from '../../core/text/dwell-text.ts';
import { recheckLines } from '../../core/text/recheck-text.ts';
import { changeInStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { type RecheckWish, recheckRecipe } from '../recheck/recheck-recipe.ts';

interface RecheckOptions extends RecheckWish {
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/**
 * `recheck`: every run analysed again by today's rules and held against a recipe; what dwell the runs would suggest
 * now; with `--targets` what they would at other targets. Exit code 1 when the recipe does not hold or nothing is shown.
 */
export async function recheck(files: readonly string[], options: RecheckOptions): Promise<void> {
  await changeInStore(options, async (store) => {
    const { recipe, result, outcome, settings, byTarget } = await recheckRecipe(store, files, options);
    if (options.json) {
      const { trial, dwell, uncertainty } = outcomeJson(outcome, options.show);
      printJson({
        ...recheckJson(recipe, result, byTarget, options.show),
        now: { trial, dwell, uncertainty },
      });
    } else {
      print(
        [
          ...recheckLines(recipe, result, options.show),
          COMMAND_TEXT.suggestNow,
          ...dwellSentences({ statistics: outcome.statistics, ...settings }).map((line) => `  ${line}`),
          ...(byTarget.length === 0 ? [] : dwellTableLines(byTarget, options.show)),
        ].join('\n'),
      );
    }
    if (result.verdict !== 'holds') process.exitCode = 1;
  });
}
