import type Database from 'better-sqlite3';
import type { Store } from '../../core/store/Store.ts';
import { storeRefusals } from '../../core/text/store-refusals.ts';
import { StoreError } from './StoreError.ts';

interface Row {
  trial_id: string;
  assembly_name: string;
  press_name: string;
  started_at: string;
  closed_at: string | null;
  simulated: 0 | 1;
}

/** Trials in the order they were started. A trial is closed once; closing it again changes nothing. */
export function trialTable(database: Database.Database): Pick<Store, 'startTrial' | 'closeTrial' | 'trials'> {
  const insert = database.prepare<[Omit<Row, 'closed_at'>]>(`
    INSERT INTO trials (trial_id, assembly_name, press_name, started_at, simulated)
    VALUES (@trial_id, @assembly_name, @press_name, @started_at, @simulated)
    ON CONFLICT (trial_id) DO NOTHING`);
  const close = database.prepare('UPDATE trials SET closed_at = coalesce(closed_at, ?) WHERE trial_id = ?');
  const all = database.prepare<[], Row>('SELECT * FROM trials ORDER BY trial_row');
  const recordingsOf = database
    .prepare<[string], string>(
      'SELECT recording_id FROM recordings WHERE trial_id = ? ORDER BY recording_row',
    )
    .pluck();
  return {
    startTrial(trial) {
      const { changes } = insert.run({
        trial_id: trial.trialId,
        assembly_name: trial.assemblyName,
        press_name: trial.pressName,
        started_at: trial.startedAt,
        simulated: trial.simulated ? 1 : 0,
      });
      if (changes === 0) throw new StoreError('store-trial-exists', storeRefusals.trialExists(trial.trialId));
    },
    closeTrial(trialId, closedAt) {
      const { changes } = close.run(closedAt, trialId);
      if (changes === 0) throw new StoreError('store-no-trial', storeRefusals.noTrial(trialId));
    },
    trials: () =>
      all.all().map((row) => ({
        trialId: row.trial_id,
        assemblyName: row.assembly_name,
        pressName: row.press_name,
        startedAt: row.started_at,
        closedAt: row.closed_at,
        simulated: row.simulated === 1,
        recordingIds: recordingsOf.all(row.trial_id),
      })),
  };
}
