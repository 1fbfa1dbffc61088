import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { keepCompiled, loadCompiled, runSource } from '../../src/program/compiled/compiled-module.ts';

const folder = mkdtempSync(join(tmpdir(), 'compiled-'));
afterAll(() => rmSync(folder, { recursive: true }));
const source = 'module.exports={twice:(value)=>2*value};';

it('a source kept with its code gives the same answers when loaded', () => {
  const first = runSource(folder, source);
  const twice = first.exports.twice as (value: number) => number;
  expect(twice(21)).toBe(42);
  keepCompiled(folder, 'kept', source, first.code());
  expect((loadCompiled(folder, 'kept')!.exports.twice as typeof twice)(4)).toBe(8);
});

it('code that the engine refuses is compiled anew from the source', () => {
  keepCompiled(folder, 'other', source, Buffer.alloc(100, 7));
  expect((loadCompiled(folder, 'other')!.exports.twice as (value: number) => number)(3)).toBe(6);
});

it('no such file: null, so that the command is loaded in the ordinary way', () => {
  expect(loadCompiled(folder, 'missing')).toBeNull();
});
