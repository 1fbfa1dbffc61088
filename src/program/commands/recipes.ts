import { recipeInForce, recipesInForce } from '../../core/bonding/recipes-in-force.ts';
import type { Store } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { reProveText } from '../../core/text/re-prove-text.ts';
import { WITHDRAW_TEXT } from '../../core/text/recipe-text.ts';
import { recipeLines } from '../../core/text/store-lists-text.ts';
import { OptionError } from '../options/OptionError.ts';
import { changeInStore, readFromStore, type StoreOptions, withStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { findRecipe } from '../recheck/find-recipe.ts';
import { reProofs } from '../trials/re-proofs.ts';
import { keepReProveAfter } from '../trials/re-prove-after.ts';
import { reProveReasonsOf } from '../trials/re-prove-reasons-of.ts';

interface RecipesOptions extends StoreOptions {
  readonly reProveAfter?: string;
  /** Version to take out of use. */
  readonly withdraw?: string;
  readonly assembly?: string;
  readonly press?: string;
  readonly initials?: string;
  readonly reason?: string;
  readonly json?: boolean;
  readonly show: 'F' | 'C';
}

/** `recipes`: every recipe version in the store, the latest of each assembly and press first; those in force with what asks for a new proof. */
export async function recipes(options: RecipesOptions): Promise<void> {
  const { withdraw } = options;
  if (withdraw !== undefined)
    return changeInStore(options, (store) => withdrawn(store, { ...options, withdraw }));
  const open = options.reProveAfter === undefined ? readFromStore : withStore;
  await open(options, (store) => {
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
          inForce: inForce.includes(recipe),
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
                recipeLines(recipe, options.show, inForce.includes(recipe)),
                ...reasonsOf(recipe).map((reason) => `  ${reProveText(reason, options.show)}`),
              ].join('\n'),
            )
            .join('\n\n'),
    );
  });
}

/** Takes one version out of use and says what is in force then. */
function withdrawn(store: Store, options: RecipesOptions & { readonly withdraw: string }): void {
  const { withdraw, initials, reason, json } = options;
  const recipe = findRecipe(store, { ...options, version: withdraw });
  if (!initials?.trim() || !reason?.trim())
    throw new OptionError(
      'recipes: a withdrawal needs initials and a reason',
      'Add both: --initials AB --reason "adhesive changed"',
      'withdrawal-unexplained',
    );
  if (recipe.withdrawn != null)
    throw new OptionError(WITHDRAW_TEXT.already(recipe), 'It is out of use already', 'recipe-withdrawn');
  const withdrawal = {
    withdrawnAt: new Date().toISOString(),
    initials: initials.trim(),
    reason: reason.trim(),
  };
  const { assemblyName, pressName, version } = recipe;
  store.withdrawRecipe({ assemblyName, pressName, version, ...withdrawal });
  const inForce = recipeInForce(store.recipes(), { assemblyName, pressName, simulated: recipe.simulated });
  if (json) printJson({ withdrawn: { ...recipe, withdrawn: withdrawal }, inForce });
  else print([WITHDRAW_TEXT.done(recipe), WITHDRAW_TEXT.nowInForce(inForce)].join('\n'));
}
