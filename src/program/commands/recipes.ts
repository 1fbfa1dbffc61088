import { recipesInForce } from '../../core/bonding/recipes-in-force.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { reProveText } from '../../core/text/re-prove-text.ts';
import { recipeLines } from '../../core/text/store-lists-text.ts';
import { type StoreOptions, withStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { reProofs } from '../trials/re-proofs.ts';
import { keepReProveAfter } from '../trials/re-prove-after.ts';
import { reProveReasonsOf } from '../trials/re-prove-reasons-of.ts';

interface RecipesOptions extends StoreOptions {
  readonly reProveAfter?: string;
  readonly json?: boolean;
  readonly show: 'F' | 'C';
}

/** `recipes`: every recipe version in the store, the latest of each assembly and press first; those in force with what asks for a new proof. */
export async function recipes(options: RecipesOptions): Promise<void> {
  await withStore(options, (store) => {
    if (options.reProveAfter !== undefined) keepReProveAfter(store, options.reProveAfter);
    const all = store.recipes();
    const inForce = recipesInForce(all);
    const found = reProveReasonsOf(store, inForce, new Date().toISOString());
    const reasonsOf = (recipe: (typeof all)[number]) => found[inForce.indexOf(recipe)] ?? [];
    if (options.json) {
      const moved = reProofs(store, all);
      return printJson({
        recipes: all.map((recipe, at) => ({
          ...recipe,
          toBeReProved: moved[at] ?? null,
          reProveReasons: reasonsOf(recipe),
        })),
      });
    }
    print(
      all.length === 0
        ? COMMAND_TEXT.none.recipe
        : all
            .map((recipe) =>
              [
                recipeLines(recipe, options.show),
                ...reasonsOf(recipe).map((reason) => `  ${reProveText(reason, options.show)}`),
              ].join('\n'),
            )
            .join('\n\n'),
    );
  });
}
