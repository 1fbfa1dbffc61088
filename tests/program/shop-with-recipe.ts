import { join } from 'node:path';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { recipeOf } from '../adapters/sqlite/samples.ts';
import { temporaryFolder } from './run-program.ts';

/** A store of its own with a recipe for WB-212 on North that rests on a real reader: hold 110 s, dwell 170 s, platens 450 °F. */
export function shopWithRecipe(): string {
  const path = join(temporaryFolder(), 'store.db');
  const store = openStore({ path });
  store.saveRecipe(
    recipeOf({ platenSetPointC: { upper: 232.2, lower: 232.2 }, holdS: 110, dwellS: 170, simulated: false }),
  );
  store.close();
  return path;
}
