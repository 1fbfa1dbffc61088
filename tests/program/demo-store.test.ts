import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

const DEMO = ['demo', '--plain', '--runs', '2'];

/** A shop whose own press and assembly happen to have the demo's names. */
function shop() {
  const folder = temporaryFolder();
  const path = join(folder, 'shop.db');
  const environment = { DWELLWRIGHT_STORE: path };
  runProgram(['presses', 'North', '--bore', '8in', '--platens', '430F'], environment);
  runProgram(
    ['assemblies', 'WB-212', '--ring-od', '212mm', '--ring-id', '168mm', '--hold', '150s'],
    environment,
  );
  const list = (what: string) => JSON.parse(runProgram([what, '--json'], environment).out);
  return { folder, path, environment, list };
}

it('the demo keeps to a store of its own beside the shop’s: bore 8 in and hold 150 s stay, no trial, no recipe', () => {
  const { folder, environment, list } = shop();
  const { code, out } = runProgram(DEMO, environment);
  expect(code).toBe(0);
  const own = join(folder, 'shop-demo.db');
  expect(out).toContain(`Store: ${own}`);
  expect(list('presses').presses).toMatchObject([{ name: 'North', ramBoreMm: 8 * 25.4 }]);
  expect(list('assemblies').assemblies).toMatchObject([{ name: 'WB-212', holdS: 150 }]);
  expect(list('trials').trials).toEqual([]);
  expect(list('recipes').recipes).toEqual([]);
  expect(JSON.parse(runProgram(['recipes', '--store', own, '--json']).out).recipes).toHaveLength(1);
});

it('--store demo names the demo’s own store, in every command; a second demo makes version 2 there', () => {
  const { folder, environment } = shop();
  runProgram(DEMO, environment);
  const named = runProgram(['recipes', '--store', 'demo'], environment);
  expect(named.out).toMatch(/WB-212 on North, version 1 — SIMULATED/);
  expect(runProgram(DEMO, environment).code).toBe(0);
  expect(runProgram(['recipes', '--store', 'demo'], environment).out).toMatch(/version 2 — SIMULATED/);
  expect(existsSync(join(folder, 'demo'))).toBe(false);
});

it('--store with a shop’s store: refused where its press or assembly is another, nothing changed, exit 2', () => {
  const { path, environment, list } = shop();
  const before = [list('presses'), list('assemblies')];
  const { code, err } = runProgram([...DEMO, '--store', path], environment);
  expect(code).toBe(2);
  expect(err).toMatch(/press "North".*differs/);
  expect(err).toMatch(/leave --store out/i);
  expect([list('presses'), list('assemblies')]).toEqual(before);
  expect(list('trials').trials).toEqual([]);
});
