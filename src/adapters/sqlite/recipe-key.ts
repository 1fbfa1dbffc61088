import { sortedJson } from './sorted-json.ts';

/** What a recipe says without its version number, keys in order: the same for a version that a merge repeated. */
export function recipeKey(recipeJson: string): string {
  const { version: _version, ...rest } = JSON.parse(recipeJson) as Record<string, unknown>;
  return sortedJson(rest);
}
