import { recipeLines } from '../../core/text/store-lists-text.ts';
import { type StoreOptions, withStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

/** `recipes`: every recipe version in the store, the latest of each assembly and press first. */
export async function recipes(
  options: StoreOptions & { readonly json?: boolean; readonly show: 'F' | 'C' },
): Promise<void> {
  await withStore(options, (store) => {
    const all = store.recipes();
    if (options.json) return printJson({ recipes: all });
    print(
      all.length === 0
        ? 'No recipe yet. Run a trial, then: dwellwright accept TRIAL --initials AB'
        : all.map((recipe) => recipeLines(recipe, options.show)).join('\n\n'),
    );
  });
}
