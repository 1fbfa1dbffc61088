import type Database from 'better-sqlite3';
import type { MergeDifference } from '../../core/exchange/MergeReport.ts';
import type { CycleRow } from './CycleRow.ts';
import { jsonProof } from './json-proof.ts';
import type { OwnVersions } from './merge-recipes.ts';
import { sortedJson } from './sorted-json.ts';

/**
 * Brings cycles of production in, each under the number its recipe version has here. A cycle that both stores hold
 * stays as it is here; where the two say different things of it, that is told.
 */
export function mergeCycles(
  own: Database.Database,
  other: Database.Database,
  versionsOf: OwnVersions,
): { readonly added: number; readonly differences: readonly MergeDifference[] } {
  const find = own.prepare<[string], CycleRow>('SELECT * FROM cycles WHERE cycle_id = ?');
  const insert = own.prepare<[CycleRow & { proof: string }]>(`
    INSERT INTO cycles (cycle_id, assembly_name, press_name, recipe_version, closed_at, dwell_held_s, result, simulated, cycle_json, proof)
    VALUES (@cycle_id, @assembly_name, @press_name, @recipe_version, @closed_at, @dwell_held_s, @result, @simulated, @cycle_json, @proof)`);
  const differences: MergeDifference[] = [];
  let added = 0;
  for (const theirs of other.prepare<[], CycleRow>('SELECT * FROM cycles ORDER BY cycle_row').iterate()) {
    const versions = versionsOf(theirs.assembly_name, theirs.press_name, theirs.recipe_version);
    const ours = find.get(theirs.cycle_id);
    // Of several numbers of one recipe the cycle keeps the one it has.
    const wanted = ours?.recipe_version ?? theirs.recipe_version;
    const version = versions.includes(wanted) ? wanted : versions[0];
    if (version === undefined)
      throw new TypeError(`the recipe of cycle ${theirs.cycle_id} is brought in before the cycle`);
    const cycle = { ...fieldsOf(theirs), recipeVersion: version };
    if (ours === undefined) {
      const json = JSON.stringify(cycle);
      insert.run({ ...theirs, recipe_version: version, cycle_json: json, proof: jsonProof(json) });
      added += 1;
      continue;
    }
    const details = whatDiffers(fieldsOf(ours), cycle);
    if (details.length > 0) differences.push({ kind: 'cycle', subject: ours.cycle_id, details });
  }
  return { added, differences };
}

type Fields = Readonly<Record<string, unknown>>;

const fieldsOf = ({ cycle_json }: CycleRow): Fields => JSON.parse(cycle_json) as Fields;

function whatDiffers(ours: Fields, theirs: Fields): MergeDifference['details'] {
  return [...new Set([...Object.keys(ours), ...Object.keys(theirs)])].flatMap((key) => {
    const [own, other] = [shown(ours[key]), shown(theirs[key])];
    const what = key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
    return own === other ? [] : [{ what, own, other }];
  });
}

const shown = (value: unknown): string =>
  value === null || value === undefined
    ? 'not stated'
    : typeof value === 'string'
      ? value
      : sortedJson(value);
