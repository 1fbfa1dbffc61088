import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { north, recipeOf, wb212 } from '../adapters/sqlite/samples.ts';
import { runProgram, temporaryFolder } from './run-program.ts';

/** Two real versions, and a simulated one accepted last. */
function shop() {
  const path = join(temporaryFolder(), 'store.db');
  const store = openStore({ path });
  store.savePress(north);
  store.saveAssembly(wb212);
  store.saveRecipe(recipeOf({ dwellS: 170, simulated: false }));
  store.saveRecipe(recipeOf({ dwellS: 172, simulated: false }));
  store.saveRecipe(recipeOf({ dwellS: 99, simulated: true, acceptedAt: '2026-04-01T10:00:00Z' }));
  store.close();
  const run = (...args: readonly string[]) => runProgram([...args, '--store', path]);
  return { path, run, json: (...args: readonly string[]) => JSON.parse(run(...args, '--json').out) };
}

const SAID = ['--initials', 'KT', '--reason', 'adhesive changed'];

it('a simulated recipe accepted last displaces no real one: bonding times 172 s, the list says which is in force', () => {
  const { run, json } = shop();
  expect(json('recipes').recipes.map((one: { inForce: boolean }) => one.inForce)).toEqual([
    false,
    true,
    false,
  ]);
  expect(run('recipes').out).toMatch(/version 2 — in force/);
  const bond = ['bond', '--assembly', 'WB-212', '--press', 'North', '--plain', '--seconds', '1s'];
  expect(run(...bond, '--no-reader').out).toMatch(/172 s/);
  expect(run(...bond, '--simulated').out).toMatch(/172 s/);
});

it('withdrawing version 2 puts version 1 in force, then none real; all stay on record, in JSON, CSV and under verify', () => {
  const { run, json } = shop();
  const unexplained = run('recipes', '--withdraw', '2', '--initials', 'KT');
  expect(unexplained.code).toBe(2);
  expect(unexplained.err).toMatch(/reason/);
  const first = run('recipes', '--withdraw', '2', ...SAID);
  expect(first.code).toBe(0);
  expect(first.out).toMatch(
    /Withdrawn: WB-212 on North, version 2[\s\S]*In force now: version 1, dwell 170 s/,
  );
  expect(run('recipes', '--withdraw', '2', ...SAID).err).toMatch(/withdrawn .* by KT: adhesive changed/);
  expect(run('recipes', '--withdraw', '1', ...SAID).out).toMatch(/No recipe is in force/);
  const bond = ['bond', '--assembly', 'WB-212', '--press', 'North', '--no-reader', '--plain'];
  expect(run(...bond).code).toBe(2);
  expect(json('recipes').recipes).toMatchObject([
    { version: 1, withdrawn: { initials: 'KT', reason: 'adhesive changed' }, inForce: false },
    { version: 2, withdrawn: { initials: 'KT', reason: 'adhesive changed' }, inForce: false },
    { version: 3, simulated: true },
  ]);
  expect(run('recipes').out).toMatch(/version 2 — WITHDRAWN[\s\S]*withdrawn .* UTC by KT: adhesive changed/);
  expect(run('export', 'recipes').out).toContain('adhesive changed');
  expect(run('verify').code).toBe(0);
});

it('a new bore says what gauge today’s ram needs: 8 in for 200 mm, 225 psi on the ring', () => {
  const path = join(temporaryFolder(), 'store.db');
  const run = (...args: readonly string[]) => runProgram([...args, '--store', path]);
  expect(run('demo', '--plain', '--runs', '2').code).toBe(0);
  const [recipe] = JSON.parse(run('recipes', '--json').out).recipes;
  // By hand: ring area ÷ ram area = (212² − 168²) ÷ 200² = 0.418; 225 psi × 0.418 = 94.05 psi.
  expect(recipe.gaugePsi).toBeCloseTo(94.05, 6);
  expect(recipe.pressing).toMatchObject({ gaugeBy: 'worked-out', ramBoreMm: 200, rams: 1 });
  expect(recipe.pressing.netFacingPsi).toBeCloseTo(225, 9);
  const list = run('recipes').out;
  expect(list).toMatch(/platens set to 450 °F/);
  expect(list).toMatch(/ram gauge 94 psi .*225 psi .*on the ring.*200 mm/);
  expect(run('presses', 'North', '--bore', '8in').code).toBe(0);
  const bond = ['bond', '--assembly', 'WB-212', '--press', 'North', '--no-reader', '--simulated', '--plain'];
  // 203.2 mm: 225 × 0.418 × (200 ÷ 203.2)² = 91.1 psi; 94.05 psi would give 225 × (203.2 ÷ 200)² = 232 psi.
  expect(run(...bond, '--seconds', '1s').out).toMatch(
    /recipe says 94 psi.*need 91\.1 psi.*would give 232 psi/s,
  );
  expect(run('presses', 'North', '--bore', '200mm').code).toBe(0);
  expect(run(...bond, '--seconds', '1s').out).not.toMatch(/recipe says/);
});
