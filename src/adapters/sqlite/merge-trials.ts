import { createHash } from 'node:crypto';
import type Database from 'better-sqlite3';

interface Row {
  trial_id: string;
  assembly_name: string;
  press_name: string;
  started_at: string;
  closed_at: string | null;
  simulated: 0 | 1;
}

export interface MergedTrials {
  readonly added: number;
  /** Own id of each trial of the other store. */
  readonly idOf: ReadonlyMap<string, string>;
  readonly renamed: readonly { readonly from: string; readonly to: string }[];
}

/**
 * Brings trials in. The same id with the same assembly and press is the same trial: it starts at the earlier start and
 * is closed if one of the two is. The same id with another assembly or press is another trial and gets a longer id,
 * the same one each time.
 */
export function mergeTrials(own: Database.Database, other: Database.Database): MergedTrials {
  const find = own.prepare<[string], Row>('SELECT * FROM trials WHERE trial_id = ?');
  const insert = own.prepare<[Row]>(`
    INSERT INTO trials (trial_id, assembly_name, press_name, started_at, closed_at, simulated)
    VALUES (@trial_id, @assembly_name, @press_name, @started_at, @closed_at, @simulated)`);
  const update = own.prepare<[Pick<Row, 'trial_id' | 'started_at' | 'closed_at'>]>(
    'UPDATE trials SET started_at = @started_at, closed_at = @closed_at WHERE trial_id = @trial_id',
  );
  const idOf = new Map<string, string>();
  const renamed: { from: string; to: string }[] = [];
  let added = 0;
  for (const theirs of other.prepare<[], Row>('SELECT * FROM trials ORDER BY trial_row').all()) {
    const clash = find.get(theirs.trial_id);
    const trialId = clash === undefined || sameTrial(clash, theirs) ? theirs.trial_id : longerId(theirs);
    idOf.set(theirs.trial_id, trialId);
    const ours = find.get(trialId);
    if (ours === undefined) {
      insert.run({ ...theirs, trial_id: trialId });
      added += 1;
      if (trialId !== theirs.trial_id) renamed.push({ from: theirs.trial_id, to: trialId });
    } else {
      const started_at = earlier(ours.started_at, theirs.started_at);
      const closed_at = later(ours.closed_at, theirs.closed_at);
      if (started_at !== ours.started_at || closed_at !== ours.closed_at)
        update.run({ trial_id: trialId, started_at, closed_at });
    }
  }
  return { added, idOf, renamed };
}

const sameTrial = (a: Row, b: Row): boolean =>
  a.assembly_name === b.assembly_name && a.press_name === b.press_name && a.simulated === b.simulated;

function longerId({ trial_id, assembly_name, press_name, simulated }: Row): string {
  const hash = createHash('sha256').update(JSON.stringify([assembly_name, press_name, simulated]));
  return `${trial_id}-${hash.digest('hex').slice(0, 6)}`;
}

const earlier = (a: string, b: string): string => (Date.parse(b) < Date.parse(a) ? b : a);

function later(a: string | null, b: string | null): string | null {
  if (a === null || b === null) return a ?? b;
  return Date.parse(b) > Date.parse(a) ? b : a;
}
