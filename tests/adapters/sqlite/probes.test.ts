import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import type { Probe } from '../../../src/core/probe/Probe.ts';
import { newAssembly } from '../../../src/program/commands/assemblies.ts';

const fresh = (): string => join(mkdtempSync(join(tmpdir(), 'dwellwright-probes-')), 'store.db');

const probe: Probe = Object.freeze({
  name: 'K-07',
  thermocoupleType: 'K',
  toleranceClass: 'iec-class-2',
  points: [{ temperatureC: 177, errorC: -0.6, standardUncertaintyC: 0.25, calibratedOn: '2026-03-01' }],
  readerIncluded: true,
  headC: 25,
  readerC: null,
});

describe('probes in the store', () => {
  it('keeps every version; the latest counts, also after reopening', () => {
    const path = fresh();
    const store = openStore({ path });
    const before = { ...probe, points: [] };
    store.saveProbe(before, '2026-01-01T08:00:00Z');
    store.saveProbe({ ...probe, name: 'A-01' }, '2026-02-01T08:00:00Z');
    store.saveProbe(probe, '2026-03-01T08:00:00Z');
    store.close();
    const again = openStore({ path });
    expect(again.probes()).toEqual([{ ...probe, name: 'A-01' }, probe]);
    expect(again.probeHistory('K-07')).toEqual([
      { savedAt: '2026-03-01T08:00:00Z', probe },
      { savedAt: '2026-01-01T08:00:00Z', probe: before },
    ]);
    expect(again.probeHistory('none')).toEqual([]);
    again.close();
  });

  it('refuses a figure that is no number, and never changes or drops a version', () => {
    const path = fresh();
    const store = openStore({ path });
    store.saveProbe(probe, 'then');
    expect(() => store.saveProbe({ ...probe, headC: Number.NaN }, 'then')).toThrow();
    store.close();
    const database = new Database(path);
    expect(() => database.prepare("UPDATE probes SET probe_json = '{}'").run()).toThrow(/never updated/);
    expect(() => database.prepare('DELETE FROM probes').run()).toThrow(/never deleted/);
    database.close();
  });

  it('keeps the data sheet’s cure figures with the assembly, and their absence', () => {
    const store = openStore({ path: ':memory:' });
    const cure = { activationEnergyKjPerMol: 80, referenceC: 177, rangeC: { from: 120, to: 200 } };
    store.saveAssembly({ ...newAssembly('WB-212'), cure });
    store.saveAssembly(newAssembly('WB-150'));
    expect(store.assemblies().map((one) => one.cure ?? null)).toEqual([cure, null]);
    store.saveAssembly(newAssembly('WB-212'));
    expect(store.assemblies()[0]!.cure ?? null).toBeNull();
    store.close();
  });
});
