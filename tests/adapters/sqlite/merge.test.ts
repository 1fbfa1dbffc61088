import { copyFileSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mergeStores } from '../../../src/adapters/sqlite/merge-stores.ts';
import { migrate } from '../../../src/adapters/sqlite/migrate.ts';
import { MIGRATIONS } from '../../../src/adapters/sqlite/migrations.ts';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import { verifyStore } from '../../../src/adapters/sqlite/verify-store.ts';
import { recipesInForce } from '../../../src/core/bonding/recipes-in-force.ts';
import type { Probe } from '../../../src/core/probe/Probe.ts';
import type { Store } from '../../../src/core/store/Store.ts';
import { addTrial, contentsOf, filled, rowCounts, tamper } from './filled-store.ts';
import { cycleOf, headOf, lineAt, north, recipeOf, resultOf, temporaryFolder, wb212 } from './samples.ts';

/** Two stores in one folder, each filled in its own way. */
function twoStores(fillOne: (store: Store) => void, fillTwo: (store: Store) => void) {
  const folder = temporaryFolder();
  return {
    folder,
    one: filled(join(folder, 'one.db'), fillOne),
    two: filled(join(folder, 'two.db'), fillTwo),
  };
}

/** Merges copies of two stores each way; the stores themselves stay as they are. */
function mergeBothWays({ folder, one, two }: { folder: string; one: string; two: string }) {
  const oneWithTwo = join(folder, 'one-with-two.db');
  const twoWithOne = join(folder, 'two-with-one.db');
  copyFileSync(one, oneWithTwo);
  copyFileSync(two, twoWithOne);
  const reports = [
    mergeStores({ ownPath: oneWithTwo, otherPath: two }),
    mergeStores({ ownPath: twoWithOne, otherPath: one }),
  ] as const;
  return { oneWithTwo, twoWithOne, reports };
}

const decision = (
  name: string,
  kind: 'set-aside' | 'taken-in' | 'automatic',
  reason: string,
  decidedAt: string,
) => ({ recordingId: `recording-${name}`, runNumber: 1, kind, reason, decidedAt });

/** Kind and reason that count for the run of a trial. */
function decisionInForce(path: string, name: string): unknown {
  const store = openStore({ path });
  const [run] = store.trialRuns(`trial-${name}`);
  store.close();
  return run?.decision;
}

function recipeInForce(path: string): unknown {
  const store = openStore({ path });
  const [latest] = store.recipes().toSorted((a, b) => b.version - a.version);
  store.close();
  return latest?.note;
}

test('two laptops with work of their own: both ways give equal contents, and everything of each is there', () => {
  const stores = twoStores(
    (store) => {
      addTrial(store, 'a');
      addTrial(store, 'shared');
      store.decideRun(decision('a', 'set-aside', 'carrier warm', '2026-03-02T09:00:00.000Z'));
      store.saveRecipe(recipeOf({ note: 'one' }));
      store.exchange.saveLayout({
        name: 'desk',
        options: { unit: 'C' },
        savedAt: '2026-03-02T09:00:00.000Z',
      });
    },
    (store) => {
      addTrial(store, 'shared');
      addTrial(store, 'b', { entries: 4_500, press: 'South' });
      store.savePress({ ...north, name: 'South' });
      store.saveRecipe(recipeOf({ note: 'two', pressName: 'South' }));
    },
  );
  const { oneWithTwo, twoWithOne, reports } = mergeBothWays(stores);
  expect(contentsOf(oneWithTwo)).toEqual(contentsOf(twoWithOne));
  expect(reports[0]).toMatchObject({
    added: {
      presses: 1,
      assemblies: 0,
      layouts: 0,
      trials: 1,
      recordings: 1,
      continued: 0,
      runResults: 1,
      decisions: 0,
      recipes: 1,
    },
    differences: [],
    renumbered: [],
    renamedTrials: [],
  });
  expect(reports[1].added).toMatchObject({ layouts: 1, trials: 1, recordings: 1, decisions: 1, recipes: 1 });
  for (const path of [oneWithTwo, twoWithOne])
    expect(verifyStore(path)).toMatchObject({ recordings: 3, sound: 3, recipes: 2, problems: [] });
});

test('merged twice: the second time adds no row to any table', () => {
  const stores = twoStores(
    (store) => {
      addTrial(store, 'a');
      store.saveRecipe(recipeOf({ note: 'one', acceptedAt: '2026-03-05T10:00:00Z' }));
      store.decideRun(decision('a', 'set-aside', 'one', '2026-03-05T09:00:00.000Z'));
    },
    (store) => {
      addTrial(store, 'a');
      store.saveRecipe(recipeOf({ note: 'two', acceptedAt: '2026-03-04T10:00:00Z' }));
      store.decideRun(decision('a', 'taken-in', 'two', '2026-03-04T09:00:00.000Z'));
    },
  );
  const { oneWithTwo } = mergeBothWays(stores);
  const before = rowCounts(oneWithTwo);
  const again = mergeStores({ ownPath: oneWithTwo, otherPath: stores.two });
  expect(Object.values(again.added).every((count) => count === 0)).toBe(true);
  expect(again.renumbered).toEqual([]);
  expect(rowCounts(oneWithTwo)).toEqual(before);
});

test('the other store is only read: its bytes stay the same', () => {
  const { one, two } = twoStores(
    (store) => addTrial(store, 'a'),
    (store) => addTrial(store, 'b'),
  );
  const before = readFileSync(two);
  mergeStores({ ownPath: one, otherPath: two });
  expect(readFileSync(two).equals(before)).toBe(true);
});

test('into a store that is not there yet: it is made, and is equal', () => {
  const { folder, two } = twoStores(
    () => {},
    (store) => {
      addTrial(store, 'b');
      store.saveRecipe(recipeOf());
    },
  );
  const fresh = join(folder, 'new', 'fresh.db');
  mergeStores({ ownPath: fresh, otherPath: two });
  expect(contentsOf(fresh)).toEqual(contentsOf(two));
});

describe('withdrawals and simulated recipes from two laptops', () => {
  const inForce = (path: string) => {
    const store = openStore({ path });
    const [recipe = null] = recipesInForce(store.recipes());
    store.close();
    return recipe;
  };
  const pair = { assemblyName: 'WB-212', pressName: 'North' };
  const withdrawal = { withdrawnAt: '2026-03-06T08:00:00Z', initials: 'KT', reason: 'adhesive changed' };

  test('a recipe withdrawn on one laptop is in force on neither after merging, also where its number differs', () => {
    const folder = temporaryFolder();
    const shared = recipeOf({ note: 'shared', simulated: false });
    const one = filled(join(folder, 'one.db'), (store) => {
      store.saveRecipe(recipeOf({ note: 'other', simulated: true }));
      store.saveRecipe(shared);
    });
    const two = filled(join(folder, 'two.db'), (store) => {
      store.saveRecipe(shared);
      store.withdrawRecipe({ ...pair, version: 1, ...withdrawal });
    });
    const report = mergeStores({ ownPath: one, otherPath: two });
    expect(report.added).toMatchObject({ recipes: 0, withdrawals: 1 });
    expect(inForce(one)).toMatchObject({ note: 'other', simulated: true });
    const store = openStore({ path: one });
    expect(store.recipes().find(({ note }) => note === 'shared')).toMatchObject({
      version: 2,
      withdrawn: withdrawal,
    });
    store.close();
    expect(mergeStores({ ownPath: one, otherPath: two }).added.withdrawals).toBe(0);
    expect(verifyStore(one).problems).toEqual([]);
  });

  test('a simulated recipe accepted last on the other laptop comes in under its own number and displaces no real one', () => {
    const folder = temporaryFolder();
    const one = filled(join(folder, 'one.db'), (store) =>
      store.saveRecipe(recipeOf({ note: 'real', simulated: false, acceptedAt: '2026-03-02T10:00:00Z' })),
    );
    const two = filled(join(folder, 'two.db'), (store) =>
      store.saveRecipe(recipeOf({ note: 'trying', simulated: true, acceptedAt: '2026-03-09T10:00:00Z' })),
    );
    expect(mergeStores({ ownPath: one, otherPath: two }).renumbered).toMatchObject([{ from: 1, to: 2 }]);
    expect(inForce(one)).toMatchObject({ note: 'real', version: 1 });
  });

  test('a withdrawal is never changed or deleted, and needs its recipe, a reason and initials', () => {
    const path = filled(join(temporaryFolder(), 'store.db'), (store) => {
      store.saveRecipe(recipeOf({}));
      store.withdrawRecipe({ ...pair, version: 1, ...withdrawal });
      expect(() => store.withdrawRecipe({ ...pair, version: 2, ...withdrawal })).toThrow();
      expect(() => store.withdrawRecipe({ ...pair, version: 1, ...withdrawal, reason: '' })).toThrow();
      expect(() => store.withdrawRecipe({ ...pair, version: 1, ...withdrawal, initials: '' })).toThrow();
    });
    const database = new Database(path);
    expect(() => database.exec("UPDATE recipe_withdrawals SET reason = 'x'")).toThrow(/never updated/);
    expect(() => database.exec('DELETE FROM recipe_withdrawals')).toThrow(/never deleted/);
    database.close();
  });
});

describe('recipes of one assembly and press from two laptops', () => {
  const versions = (path: string): readonly string[] => {
    const store = openStore({ path });
    const all = store.recipes().toSorted((a, b) => a.version - b.version);
    store.close();
    return all.map((recipe) => `${recipe.version} ${recipe.note}`);
  };

  test('none is lost; the one accepted last is in force both ways', () => {
    const stores = twoStores(
      (store) => {
        store.saveRecipe(recipeOf({ note: 'January', acceptedAt: '2026-01-05T10:00:00Z' }));
        store.saveRecipe(recipeOf({ note: 'June', acceptedAt: '2026-06-05T10:00:00Z' }));
      },
      (store) => {
        store.saveRecipe(recipeOf({ note: 'March', acceptedAt: '2026-03-05T10:00:00Z' }));
      },
    );
    const { oneWithTwo, twoWithOne, reports } = mergeBothWays(stores);
    // Without the repeat, March (version 3) would have taken the place of June.
    expect(versions(oneWithTwo)).toEqual(['1 January', '2 June', '3 March', '4 June']);
    expect(versions(twoWithOne)).toEqual(['1 March', '2 January', '3 June']);
    expect(recipeInForce(oneWithTwo)).toBe('June');
    expect(recipeInForce(twoWithOne)).toBe('June');
    expect(contentsOf(oneWithTwo)).toEqual(contentsOf(twoWithOne));
    expect(reports[0].renumbered).toEqual([
      { assemblyName: 'WB-212', pressName: 'North', from: 1, to: 3, why: 'number-taken' },
      { assemblyName: 'WB-212', pressName: 'North', from: 2, to: 4, why: 'stays-in-force' },
    ]);
  });

  test('a store that goes on from a copy: the same versions are the same, the new one keeps its number', () => {
    const stores = twoStores(
      (store) => store.saveRecipe(recipeOf({ note: 'first' })),
      () => {},
    );
    const copy = join(stores.folder, 'copy.db');
    copyFileSync(stores.one, copy);
    filled(copy, (store) => store.saveRecipe(recipeOf({ note: 'second' })));
    const report = mergeStores({ ownPath: stores.one, otherPath: copy });
    expect(versions(stores.one)).toEqual(['1 first', '2 second']);
    expect(report).toMatchObject({ added: { recipes: 1 }, renumbered: [] });
    expect(mergeStores({ ownPath: copy, otherPath: stores.one }).added.recipes).toBe(0);
  });
});

describe('cycles of production from two laptops', () => {
  const cyclesWithNotes = (path: string): readonly string[] => {
    const store = openStore({ path });
    const recipes = store.recipes();
    const all = store.cycles().map(({ cycleId, recipeVersion }) => {
      const recipe = recipes.find(({ version }) => version === recipeVersion);
      return `${cycleId} by ${recipeVersion} ${recipe?.note}`;
    });
    store.close();
    return all;
  };

  test('each keeps the recipe it was made by, also where that came in under another number; none comes twice', () => {
    const stores = twoStores(
      (store) => {
        store.saveRecipe(recipeOf({ note: 'January', acceptedAt: '2026-01-05T10:00:00Z' }));
        store.saveRecipe(recipeOf({ note: 'June', acceptedAt: '2026-06-05T10:00:00Z' }));
        store.saveCycle(cycleOf('first', { recipeVersion: 2 }));
      },
      (store) => {
        store.saveRecipe(recipeOf({ note: 'March', acceptedAt: '2026-03-05T10:00:00Z' }));
        store.saveCycle(cycleOf('second', { recipeVersion: 1, result: 'opened-early', dwellHeldS: 90.5 }));
      },
    );
    const { oneWithTwo, twoWithOne, reports } = mergeBothWays(stores);
    expect(cyclesWithNotes(oneWithTwo)).toEqual(['first by 2 June', 'second by 3 March']);
    expect(cyclesWithNotes(twoWithOne)).toEqual(['second by 1 March', 'first by 3 June']);
    expect(reports.map(({ added }) => added.cycles)).toEqual([1, 1]);
    // June is version 2 and 4 in one, 3 in the other: still one recipe, nothing differs, nothing is added.
    for (const [ownPath, otherPath] of [
      [oneWithTwo, twoWithOne],
      [twoWithOne, oneWithTwo],
    ] as const)
      expect(mergeStores({ ownPath, otherPath })).toMatchObject({ added: { cycles: 0 }, differences: [] });
    for (const path of [oneWithTwo, twoWithOne])
      expect(verifyStore(path)).toMatchObject({ cycles: 2, problems: [] });
    // Made by the repeat, June as version 4: it keeps that number where the number says the same.
    const copy = join(stores.folder, 'copy.db');
    copyFileSync(oneWithTwo, copy);
    filled(copy, (store) => store.saveCycle(cycleOf('third', { recipeVersion: 4 })));
    mergeStores({ ownPath: oneWithTwo, otherPath: copy });
    expect(cyclesWithNotes(oneWithTwo).at(-1)).toBe('third by 4 June');
  });

  test('one id, told differently: own is kept and the difference is told', () => {
    const { one, two } = twoStores(
      (store) => {
        store.saveRecipe(recipeOf());
        store.saveCycle(cycleOf('same'));
      },
      (store) => {
        store.saveRecipe(recipeOf());
        store.saveCycle(cycleOf('same', { dwellHeldS: 181 }));
      },
    );
    expect(mergeStores({ ownPath: one, otherPath: two }).differences).toEqual([
      { kind: 'cycle', subject: 'same', details: [{ what: 'dwell_held_s', own: '178.25', other: '181' }] },
    ]);
    const store = openStore({ path: one });
    expect(store.cycles()).toEqual([cycleOf('same')]);
    store.close();
  });
});

describe('decisions on one run from two laptops', () => {
  test('the one made last counts both ways, whichever came in first', () => {
    const stores = twoStores(
      (store) => {
        addTrial(store, 'a');
        store.decideRun(decision('a', 'set-aside', 'late', '2026-03-05T09:00:00.000Z'));
      },
      (store) => {
        addTrial(store, 'a');
        store.decideRun(decision('a', 'taken-in', 'early', '2026-03-04T09:00:00.000Z'));
      },
    );
    const { oneWithTwo, twoWithOne } = mergeBothWays(stores);
    expect(decisionInForce(oneWithTwo, 'a')).toEqual({ kind: 'set-aside', reason: 'late' });
    expect(decisionInForce(twoWithOne, 'a')).toEqual({ kind: 'set-aside', reason: 'late' });
    expect(contentsOf(oneWithTwo)).toEqual(contentsOf(twoWithOne));
  });

  test('an old copy merged back does not bring an old decision back, even where the clock ran wrong', () => {
    const stores = twoStores(
      (store) => {
        addTrial(store, 'a');
        store.decideRun(decision('a', 'set-aside', 'first', '2026-03-05T09:00:00.000Z'));
      },
      () => {},
    );
    const copy = join(stores.folder, 'copy.db');
    copyFileSync(stores.one, copy);
    // The laptop's clock was put back by a day between the two decisions.
    filled(stores.one, (store) =>
      store.decideRun(decision('a', 'automatic', 'second', '2026-03-04T09:00:00.000Z')),
    );
    mergeStores({ ownPath: stores.one, otherPath: copy });
    expect(decisionInForce(stores.one, 'a')).toEqual({ kind: 'automatic' });
    mergeStores({ ownPath: copy, otherPath: stores.one });
    expect(decisionInForce(copy, 'a')).toEqual({ kind: 'automatic' });
  });
});

test('probes: what was stated last of each counts both ways, its history is whole', () => {
  const probe = (headC: number): Probe => ({
    name: 'P-7',
    thermocoupleType: 'K',
    toleranceClass: null,
    points: [],
    readerIncluded: false,
    headC,
    readerC: null,
  });
  const stores = twoStores(
    (store) => store.saveProbe(probe(24), '2026-03-05T09:00:00.000Z'),
    (store) => {
      store.saveProbe(probe(22), '2026-03-03T09:00:00.000Z');
      store.saveProbe(probe(23), '2026-03-04T09:00:00.000Z');
    },
  );
  const { oneWithTwo, twoWithOne } = mergeBothWays(stores);
  for (const path of [oneWithTwo, twoWithOne]) {
    const store = openStore({ path });
    expect(store.probes()).toEqual([probe(24)]);
    expect(new Set(store.probeHistory('P-7').map((one) => one.probe.headC))).toEqual(new Set([22, 23, 24]));
    store.close();
  }
});

describe('a recording that one store holds only in part', () => {
  test('is continued to its closing where it was copied in the middle, whatever the blocks', () => {
    const folder = temporaryFolder();
    const one = join(folder, 'one.db');
    const store = openStore({ path: one });
    const writer = store.startRecording(headOf('live'));
    for (let number = 0; number < 70; number += 1) writer.append(lineAt(number * 100_000));
    writer.flush();
    const copy = join(folder, 'copy.db');
    mergeStores({ ownPath: copy, otherPath: one });
    expect(verifyStore(copy).notClosed).toEqual(['live']);
    for (let number = 70; number < 200; number += 1) writer.append(lineAt(number * 100_000));
    writer.close();
    store.close();
    expect(mergeStores({ ownPath: copy, otherPath: one }).added).toMatchObject({
      recordings: 0,
      continued: 1,
    });
    expect(contentsOf(copy)).toEqual(contentsOf(one));
    expect(verifyStore(copy)).toMatchObject({ sound: 1, notClosed: [], problems: [] });
    // The shorter one brings nothing, and takes nothing away.
    const shorter = filled(join(folder, 'shorter.db'), (other) => {
      const short = other.startRecording(headOf('live'));
      for (let number = 0; number < 33; number += 1) short.append(lineAt(number * 100_000));
      short.flush();
    });
    expect(mergeStores({ ownPath: copy, otherPath: shorter }).added.continued).toBe(0);
    expect(verifyStore(copy)).toMatchObject({ sound: 1, problems: [] });
  });

  test('with other entries under the same id refuses the whole merge', () => {
    const { one, two } = twoStores(
      (store) => addTrial(store, 'a', { entries: 120 }),
      (store) => {
        addTrial(store, 'new');
        const writer = store.startRecording(headOf('recording-a', { trialId: 'trial-a' }));
        for (let number = 0; number < 120; number += 1) writer.append(lineAt(number * 100_001));
        writer.close();
      },
    );
    const before = rowCounts(one);
    expect(() => mergeStores({ ownPath: one, otherPath: two })).toThrow(
      expect.objectContaining({ code: 'merge-recording-differs', exitCode: 1 }),
    );
    expect(rowCounts(one)).toEqual(before);
  });
});

describe('what differs is told, and own is kept', () => {
  test('a press and an assembly', () => {
    const { one, two } = twoStores(
      () => {},
      (store) => {
        store.savePress({ ...north, ramBoreMm: 250 });
        store.saveAssembly({ ...wb212, adhesive: 'film', holdS: 90 });
      },
    );
    expect(mergeStores({ ownPath: one, otherPath: two }).differences).toEqual([
      { kind: 'press', subject: 'North', details: [{ what: 'ram_bore_mm', own: '200', other: '250' }] },
      {
        kind: 'assembly',
        subject: 'WB-212',
        details: [
          { what: 'hold_s', own: '120', other: '90' },
          { what: 'adhesive', own: 'not stated', other: 'film' },
        ],
      },
    ]);
    const store = openStore({ path: one });
    expect(store.presses()).toEqual([north]);
    store.close();
  });

  test('a run result of the same rule version; one of a later version replaces', () => {
    const { one, two } = twoStores(
      (store) => {
        addTrial(store, 'a');
        addTrial(store, 'b');
      },
      (store) => {
        addTrial(store, 'a');
        addTrial(store, 'b');
        store.saveRunResult('recording-a', resultOf(1, { soakTimeS: 60 }));
        store.saveRunResult('recording-b', resultOf(1, { soakTimeS: 61, ruleVersion: 2 }));
      },
    );
    const { differences } = mergeStores({ ownPath: one, otherPath: two });
    expect(differences).toEqual([
      {
        kind: 'run-result',
        subject: 'recording-a, run 1',
        details: [{ what: 'soak time s', own: '53.52', other: '60' }],
      },
    ]);
    const store = openStore({ path: one });
    expect(store.trialRuns('trial-a')[0]?.result.soakTimeS).toBe(53.52);
    expect(store.trialRuns('trial-b')[0]?.result.soakTimeS).toBe(61);
    store.close();
  });
});

describe('one trial id on two laptops', () => {
  test('same assembly and press: one trial, from the earlier start, closed if one was', () => {
    const stores = twoStores(
      (store) => addTrial(store, 'a', { startedAt: '2026-03-02T08:00:00.000Z' }),
      (store) => {
        addTrial(store, 'a', { startedAt: '2026-03-02T07:00:00.000Z' });
        store.closeTrial('trial-a', '2026-03-02T09:00:00.000Z');
      },
    );
    const { oneWithTwo, twoWithOne } = mergeBothWays(stores);
    expect(contentsOf(oneWithTwo)).toEqual(contentsOf(twoWithOne));
    const store = openStore({ path: oneWithTwo });
    expect(store.trials()).toEqual([
      expect.objectContaining({
        startedAt: '2026-03-02T07:00:00.000Z',
        closedAt: '2026-03-02T09:00:00.000Z',
      }),
    ]);
    store.close();
  });

  test('another assembly: the other trial comes in whole under a longer id, the same one each time', () => {
    const { one, two } = twoStores(
      (store) => addTrial(store, 'a'),
      (store) => {
        store.startTrial({
          trialId: 'trial-a',
          assemblyName: 'WB-150',
          pressName: 'North',
          startedAt: '2026-03-02T07:00:00.000Z',
          simulated: true,
        });
        store.startRecording(headOf('other', { trialId: 'trial-a' })).close();
        store.saveRunResult('other', resultOf(1));
      },
    );
    const report = mergeStores({ ownPath: one, otherPath: two });
    expect(report.renamedTrials).toEqual([
      { from: 'trial-a', to: expect.stringMatching(/^trial-a-[0-9a-f]{6}$/) },
    ]);
    const store = openStore({ path: one });
    expect(store.trials().map(({ assemblyName, recordingIds }) => [assemblyName, recordingIds])).toEqual([
      ['WB-212', ['recording-a']],
      ['WB-150', ['other']],
    ]);
    store.close();
    const before = rowCounts(one);
    mergeStores({ ownPath: one, otherPath: two });
    expect(rowCounts(one)).toEqual(before);
  });
});

describe('refused by name, with own unchanged', () => {
  const refused = (code: string, prepare: (folder: string) => { ownPath: string; otherPath: string }) => {
    const paths = prepare(temporaryFolder());
    const before = existsSync(paths.ownPath) ? readFileSync(paths.ownPath) : null;
    expect(() => mergeStores(paths)).toThrow(expect.objectContaining({ code }));
    expect(existsSync(paths.ownPath) ? readFileSync(paths.ownPath) : null).toEqual(before);
  };
  const own = (folder: string) => filled(join(folder, 'own.db'), (store) => addTrial(store, 'a'));
  const other = (folder: string) => filled(join(folder, 'other.db'), (store) => addTrial(store, 'b'));

  test('the store itself', () =>
    refused('merge-same-store', (folder) => ({ ownPath: own(folder), otherPath: join(folder, 'own.db') })));
  test('a store that is not there; no store of our own is made', () =>
    refused('store-missing', (folder) => ({
      ownPath: join(folder, 'new.db'),
      otherPath: join(folder, 'none.db'),
    })));
  test('a store of a newer program', () =>
    refused('store-newer', (folder) => {
      const otherPath = other(folder);
      tamper(otherPath, "INSERT INTO migrations VALUES (999, '999-later', 'x', '')");
      return { ownPath: own(folder), otherPath };
    }));
  test('a store of an older program', () =>
    refused('store-older', (folder) => {
      const otherPath = join(folder, 'old.db');
      const database = new Database(otherPath);
      const options = { path: otherPath, readonly: false, appliedAt: '2026-03-02T08:00:00.000Z' };
      migrate(database, { ...options, migrations: MIGRATIONS.slice(0, 4) });
      database.close();
      return { ownPath: own(folder), otherPath };
    }));
  const alter = `DROP TRIGGER recording_blocks_never_updated;
    UPDATE recording_blocks SET body_text = replace(body_text, '0.100000', '0.100001')`;
  test('a damaged other', () =>
    refused('merge-damaged', (folder) => {
      const otherPath = other(folder);
      tamper(otherPath, alter);
      return { ownPath: own(folder), otherPath };
    }));
  test('a damaged own', () =>
    refused('merge-damaged', (folder) => {
      const ownPath = own(folder);
      tamper(ownPath, alter);
      return { ownPath, otherPath: other(folder) };
    }));
});

test('every table of the store is merged, or left out on purpose', () => {
  const path = filled(join(temporaryFolder(), 'store.db'), () => {});
  const merged = [
    'assemblies',
    'cycles',
    'imports',
    'logger_layouts',
    'presses',
    'probes',
    'recipe_withdrawals',
    'recipes',
    'recording_blocks',
    'recordings',
    'run_decisions',
    'run_results',
    'trials',
  ];
  // Kept traces are worked out again from the recordings when they are wanted; a closing under way is logged by the
  // program whose store it is in.
  const leftOut = ['closings_under_way', 'kept_traces', 'migrations', 'settings'];
  expect(Object.keys(rowCounts(path)).toSorted()).toEqual([...merged, ...leftOut].toSorted());
});

test('any work on two laptops from a common start: both ways equal contents, a second merge adds nothing (25 cases)', () => {
  const act = fc.oneof(
    fc.record({ what: fc.constant('trial' as const), name: fc.constantFrom('p', 'q', 'r', 's') }),
    fc.record({
      what: fc.constant('decide' as const),
      kind: fc.constantFrom('set-aside' as const, 'taken-in' as const, 'automatic' as const),
      minute: fc.integer({ min: 0, max: 59 }),
    }),
    fc.record({
      what: fc.constant('recipe' as const),
      minute: fc.integer({ min: 0, max: 59 }),
      simulated: fc.boolean(),
    }),
    fc.record({ what: fc.constant('withdraw' as const), minute: fc.integer({ min: 0, max: 59 }) }),
    fc.record({ what: fc.constant('cycle' as const), minute: fc.integer({ min: 0, max: 59 }) }),
  );
  const apply = (
    store: Store,
    who: string,
    acts: readonly (typeof act extends fc.Arbitrary<infer A> ? A : never)[],
  ) => {
    for (const [index, one] of acts.entries()) {
      if (one.what === 'trial') {
        if (!store.trials().some(({ trialId }) => trialId === `trial-${one.name}`))
          addTrial(store, one.name, { entries: 60 });
        continue;
      }
      const minute = String(one.minute).padStart(2, '0');
      // A second of its own for each laptop: two people never decide in the very same millisecond here.
      const at = `2026-03-05T09:${minute}:${who === 'one' ? '10' : '20'}.${String(index).padStart(3, '0')}Z`;
      if (one.what === 'cycle') {
        const recipeVersion = Math.max(0, ...store.recipes().map(({ version }) => version));
        // Production needs a recipe.
        if (recipeVersion > 0)
          store.saveCycle(
            cycleOf(`${who}-${index}`, { recipeVersion, closedAt: at, recordingId: 'recording-start' }),
          );
      } else if (one.what === 'decide') store.decideRun(decision('start', one.kind, `${who} ${index}`, at));
      else if (one.what === 'withdraw') {
        const [inUse] = recipesInForce(store.recipes());
        if (inUse !== undefined)
          store.withdrawRecipe({ ...inUse, withdrawnAt: at, initials: who, reason: `${index}` });
      } else
        store.saveRecipe(recipeOf({ note: `${who} ${index}`, acceptedAt: at, simulated: one.simulated }));
    }
  };
  fc.assert(
    fc.property(fc.array(act, { maxLength: 8 }), fc.array(act, { maxLength: 8 }), (first, second) => {
      const folder = temporaryFolder();
      const start = filled(join(folder, 'start.db'), (store) => addTrial(store, 'start', { entries: 60 }));
      const one = join(folder, 'one.db');
      const two = join(folder, 'two.db');
      copyFileSync(start, one);
      copyFileSync(start, two);
      filled(one, (store) => apply(store, 'one', first));
      filled(two, (store) => apply(store, 'two', second));
      const { oneWithTwo, twoWithOne } = mergeBothWays({ folder, one, two });
      expect(contentsOf(oneWithTwo)).toEqual(contentsOf(twoWithOne));
      for (const [ownPath, otherPath] of [
        [oneWithTwo, two],
        [oneWithTwo, twoWithOne],
        [oneWithTwo, start],
      ] as const) {
        const before = rowCounts(ownPath);
        mergeStores({ ownPath, otherPath });
        expect(rowCounts(ownPath)).toEqual(before);
      }
      expect(verifyStore(oneWithTwo).problems).toEqual([]);
    }),
    { numRuns: 25, seed: 20260302 },
  );
});
