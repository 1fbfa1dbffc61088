import type Database from 'better-sqlite3';
import type { Store } from '../../core/store/Store.ts';

/** Settings remembered between starts. */
export function settingTable(database: Database.Database): Pick<Store, 'setting' | 'saveSetting'> {
  const read = database.prepare<[string], string>('SELECT value FROM settings WHERE key = ?').pluck();
  const write = database.prepare(
    'INSERT INTO settings (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value',
  );
  return {
    setting: (key) => read.get(key),
    saveSetting: (key, value) => {
      write.run(key, value);
    },
  };
}
