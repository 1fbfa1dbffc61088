import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { reProofText } from '../../core/text/fit-text.ts';
import { recipeLines } from '../../core/text/store-lists-text.ts';
import { type StoreOptions, withStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { reProofs } from '../trials/re-proofs.ts';

/** `recipes`: every recipe version in the store, the latest of each assembly and press first. */
export async function recipes(
  options: StoreOptions & { readonly json?: boolean; readonly show: 'F' | 'C' },
): Promise<void> {
  await withStore(options, (store) => {
    const all = store.recipes();
    const moved = reProofs(store, all);
    if (options.json)
      return printJson({
        recipes: all.map((recipe, at) => ({ ...recipe, toBeReProved: moved[at] ?? null })),
      });
    print(
      all.length === 0
        ? COMMAND_TEXT.none.recipe
        : all
            .map((recipe, at) => {
              const proof = moved[at] ?? null;
              const lines = recipeLines(recipe, options.show);
              return proof === null ? lines : `${lines}\n  ${reProofText(proof, options.show)}`;
            })
            .join('\n\n'),
    );
  });
}
