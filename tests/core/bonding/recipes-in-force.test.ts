import { describe, expect, it } from 'vitest';
import { recipeInForce, recipesInForce } from '../../../src/core/bonding/recipes-in-force.ts';
import type { Recipe } from '../../../src/core/recipe/Recipe.ts';

const recipe = (version: number, change: Partial<Recipe> = {}): Recipe =>
  ({
    assemblyName: 'WB-212',
    pressName: 'North',
    version,
    acceptedAt: `2026-03-0${version}T10:00:00Z`,
    simulated: false,
    ...change,
  }) as Recipe;
const withdrawn = { withdrawnAt: '2026-03-09T10:00:00Z', initials: 'KT', reason: 'adhesive changed' };
const versions = (all: readonly Recipe[]) => recipesInForce(all).map(({ version }) => version);

describe('the recipe in force', () => {
  it('is the latest version; a simulated one accepted later displaces no real one', () => {
    expect(versions([recipe(1), recipe(2)])).toEqual([2]);
    expect(versions([recipe(1), recipe(2, { simulated: true })])).toEqual([1]);
    expect(versions([recipe(1, { simulated: true }), recipe(2, { simulated: true })])).toEqual([2]);
  });

  it('is never a withdrawn one: the one before is in force again, or none', () => {
    expect(versions([recipe(1), recipe(2, { withdrawn })])).toEqual([1]);
    expect(versions([recipe(1, { withdrawn }), recipe(2, { simulated: true })])).toEqual([2]);
    expect(versions([recipe(1, { withdrawn })])).toEqual([]);
  });

  it('each press has its own; real ones come first, then the latest accepted', () => {
    const south = recipe(3, { pressName: 'South', simulated: true });
    const east = recipe(2, { pressName: 'East' });
    expect(recipesInForce([recipe(1), south, east]).map(({ pressName }) => pressName)).toEqual([
      'East',
      'North',
      'South',
    ]);
  });

  it('for a real trial a simulated recipe counts as none', () => {
    const of = { assemblyName: 'WB-212', pressName: 'North' };
    const all = [recipe(1, { simulated: true })];
    expect(recipeInForce(all, { ...of, simulated: false })).toBeNull();
    expect(recipeInForce(all, { ...of, simulated: true })?.version).toBe(1);
    expect(recipeInForce([...all, recipe(2)], { ...of, simulated: true })?.version).toBe(2);
  });
});
