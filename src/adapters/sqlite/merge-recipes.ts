import type Database from 'better-sqlite3';
import type { MergeReport } from '../../core/exchange/MergeReport.ts';
import { inForce, type Stated } from './in-force.ts';
import { jsonProof } from './json-proof.ts';
import { recipeKey } from './recipe-key.ts';

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
 * number that is taken makes the recipe the next version. In force is the highest version that is not withdrawn, a real
 * one before a simulated one: where the highest of its kind would not be the one accepted last, that one is repeated as
 * the next version. Withdrawals of both stores hold for every number of the recipe.
 */
export function mergeRecipes(
  own: Database.Database,
  other: Database.Database,
): {
  readonly added: number;
  readonly withdrawals: number;
  readonly renumbered: MergeReport['renumbered'];
  readonly versionsOf: OwnVersions;
} {
  const insert = own.prepare<[Row & { proof: string }]>(`
    INSERT INTO recipes (assembly_name, press_name, version, accepted_at, dwell_s, simulated, recipe_json, proof)
    VALUES (@assembly_name, @press_name, @version, @accepted_at, @dwell_s, @simulated, @recipe_json, @proof)`);
  const put = (row: Row, version: number) => {
    const json = JSON.stringify({ ...(JSON.parse(row.recipe_json) as object), version });
    insert.run({ ...row, version, recipe_json: json, proof: jsonProof(json) });
  };
  const renumbered: MergeReport['renumbered'][number][] = [];
  let added = 0;
  const ownLines = linesByPair(own);
  const theirLines = linesByPair(other);
  const withdrawn = withdrawnKeys([own, ownLines], [other, theirLines]);
  for (const [pair, theirs] of theirLines) {
    const ours = ownLines.get(pair) ?? [];
    const keys = new Set(ours.map((one) => one.key));
    const lines = [...ours];
    let highest = ours.at(-1)?.row.version ?? 0;
    const next = (line: Line, version: number, why: 'number-taken' | 'stays-in-force') => {
      put(line.row, version);
      const { assembly_name: assemblyName, press_name: pressName, version: from } = line.row;
      if (from !== version) renumbered.push({ assemblyName, pressName, from, to: version, why });
      highest = version;
      lines.push(line);
    };
    for (const line of theirs) {
      if (keys.has(line.key)) continue;
      keys.add(line.key);
      next(line, Math.max(line.row.version, highest + 1), 'number-taken');
      added += 1;
    }
    for (const simulated of [0, 1] as const) {
      const inUse = ({ row, key }: Line) => row.simulated === simulated && !withdrawn.has(`${pair}${key}`);
      const winner = inForce(ours.filter(inUse), theirs.filter(inUse));
      const last = lines.findLast(inUse);
      if (winner !== undefined && winner.key !== last?.key) next(winner, highest + 1, 'stays-in-force');
    }
  }
  const withdrawals = mergeWithdrawals(own, other, theirLines);
  return { added, withdrawals, renumbered, versionsOf: ownVersions(linesByPair(own), theirLines) };
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
    line.push({ key: recipeKey(row.recipe_json), at: row.accepted_at, row });
    lines.set(pair, line);
  }
  return lines;
}

interface WithdrawalRow {
  assembly_name: string;
  press_name: string;
  version: number;
  withdrawn_at: string;
  initials: string;
  reason: string;
}

type LinesByPair = ReturnType<typeof linesByPair>;

const withdrawalsIn = (database: Database.Database): readonly WithdrawalRow[] =>
  database
    .prepare<[], WithdrawalRow>(
      'SELECT assembly_name, press_name, version, withdrawn_at, initials, reason FROM recipe_withdrawals ORDER BY withdrawal_row',
    )
    .all();

/** Pair and key of every recipe that either store has withdrawn. */
function withdrawnKeys(
  ...stores: readonly (readonly [Database.Database, LinesByPair])[]
): ReadonlySet<string> {
  return new Set(
    stores.flatMap(([database, lines]) =>
      withdrawalsIn(database).map((row) => {
        const pair = JSON.stringify([row.assembly_name, row.press_name]);
        return `${pair}${lines.get(pair)?.find((one) => one.row.version === row.version)?.key}`;
      }),
    ),
  );
}

/** Brings withdrawals in: each statement for every number its recipe has here. Returns how many statements are new here. */
function mergeWithdrawals(own: Database.Database, other: Database.Database, theirLines: LinesByPair): number {
  const insert = own.prepare<[WithdrawalRow]>(`
    INSERT OR IGNORE INTO recipe_withdrawals (assembly_name, press_name, version, withdrawn_at, initials, reason)
    VALUES (@assembly_name, @press_name, @version, @withdrawn_at, @initials, @reason)`);
  const versionsOf = ownVersions(linesByPair(own), theirLines);
  const added = new Set<string>();
  for (const row of withdrawalsIn(other))
    for (const version of versionsOf(row.assembly_name, row.press_name, row.version))
      if (insert.run({ ...row, version }).changes > 0) {
        const { version: _number, ...said } = row;
        added.add(JSON.stringify(said));
      }
  return added.size;
}
