import type Database from 'better-sqlite3';
import type { MergeReport } from '../../core/exchange/MergeReport.ts';
import { inForce, type Stated } from './in-force.ts';
import { sortedJson } from './sorted-json.ts';

interface Row {
  assembly_name: string;
  press_name: string;
  version: number;
  accepted_at: string;
  dwell_s: number;
  simulated: 0 | 1;
  recipe_json: string;
}

/** Numbers under which this store holds what is a recipe version of the other store; more than one where it was repeated. */
export type OwnVersions = (assemblyName: string, pressName: string, version: number) => readonly number[];

type Line = Stated & { readonly row: Row };

/**
 * Brings recipe versions in; what two recipes say without their version numbers decides whether they are the same. A
 * number that is taken makes the recipe the next version. The highest version is in force: where that would not be the
 * one accepted last, that one is repeated as the next version.
 */
export function mergeRecipes(
  own: Database.Database,
  other: Database.Database,
): {
  readonly added: number;
  readonly renumbered: MergeReport['renumbered'];
  readonly versionsOf: OwnVersions;
} {
  const insert = own.prepare<[Row]>(`
    INSERT INTO recipes (assembly_name, press_name, version, accepted_at, dwell_s, simulated, recipe_json)
    VALUES (@assembly_name, @press_name, @version, @accepted_at, @dwell_s, @simulated, @recipe_json)`);
  const put = (row: Row, version: number) =>
    insert.run({
      ...row,
      version,
      recipe_json: JSON.stringify({ ...(JSON.parse(row.recipe_json) as object), version }),
    });
  const renumbered: MergeReport['renumbered'][number][] = [];
  let added = 0;
  const ownLines = linesByPair(own);
  for (const [pair, theirs] of linesByPair(other)) {
    const ours = ownLines.get(pair) ?? [];
    const winner = inForce(ours, theirs);
    const keys = new Set(ours.map((one) => one.key));
    let last = ours.at(-1);
    let highest = last?.row.version ?? 0;
    const next = (line: Line, version: number, why: 'number-taken' | 'stays-in-force') => {
      put(line.row, version);
      const { assembly_name: assemblyName, press_name: pressName, version: from } = line.row;
      if (from !== version) renumbered.push({ assemblyName, pressName, from, to: version, why });
      highest = version;
      last = line;
    };
    for (const line of theirs) {
      if (keys.has(line.key)) continue;
      keys.add(line.key);
      next(line, Math.max(line.row.version, highest + 1), 'number-taken');
      added += 1;
    }
    if (winner !== undefined && winner.key !== last?.key) next(winner, highest + 1, 'stays-in-force');
  }
  return { added, renumbered, versionsOf: ownVersions(linesByPair(own), linesByPair(other)) };
}

function ownVersions(
  ours: ReturnType<typeof linesByPair>,
  theirs: ReturnType<typeof linesByPair>,
): OwnVersions {
  return (assemblyName, pressName, version) => {
    const pair = JSON.stringify([assemblyName, pressName]);
    const key = theirs.get(pair)?.find(({ row }) => row.version === version)?.key;
    return (ours.get(pair) ?? []).flatMap((one) => (one.key === key ? [one.row.version] : []));
  };
}

function linesByPair(database: Database.Database): ReadonlyMap<string, readonly Line[]> {
  const lines = new Map<string, Line[]>();
  for (const row of database.prepare<[], Row>('SELECT * FROM recipes ORDER BY version').all()) {
    const pair = JSON.stringify([row.assembly_name, row.press_name]);
    const line = lines.get(pair) ?? [];
    line.push({ key: keyOf(row.recipe_json), at: row.accepted_at, row });
    lines.set(pair, line);
  }
  return lines;
}

/** The recipe without its version number, keys in order. */
function keyOf(recipeJson: string): string {
  const { version: _version, ...rest } = JSON.parse(recipeJson) as Record<string, unknown>;
  return sortedJson(rest);
}
