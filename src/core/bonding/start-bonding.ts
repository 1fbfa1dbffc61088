import type { Recipe } from '../recipe/Recipe.ts';
import { EMPTY_INPUT } from '../screen/ScreenInput.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { BondingState } from './BondingState.ts';

/** The production timer before a recipe is made ready. */
export function startBonding(options: {
  readonly choices: readonly Recipe[];
  readonly cautionsAcknowledged: boolean;
  readonly unit: TemperatureUnit;
  readonly storePath: string;
  readonly nowUs: number;
}): BondingState {
  return {
    ...options,
    selected: 0,
    job: null,
    opening: false,
    under: null,
    pending: null,
    lastOpenedUs: null,
    logged: [],
    session: null,
    latestUs: null,
    intervalS: null,
    platens: { upper: null, lower: null },
    link: { kind: 'opening' },
    store: null,
    latestMarkUs: null,
    input: EMPTY_INPUT,
    notice: null,
    asking: null,
    help: false,
  };
}
