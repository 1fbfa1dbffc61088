import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { runProgram, temporaryFolder } from './run-program.ts';

const folder = temporaryFolder();

/** Every command that only reads a store, or changes only what is there. */
const READING: readonly (readonly string[])[] = [
  ['trials'],
  ['trials', 'lot-7'],
  ['recipes'],
  ['presses'],
  ['assemblies'],
  ['probes'],
  ['recordings'],
  ['layouts'],
  ['export', 'runs'],
  ['export', 'cycles'],
  ['export', 'recordings', '--out', join(folder, 'out')],
  ['history', '--assembly', 'WB-212', '--press', 'North'],
  ['replay', '--trial', 'lot-7'],
  ['what-if', '--trial', 'lot-7', '--target', '340F'],
  ['recheck', '--assembly', 'WB-212', '--press', 'North'],
  ['set-aside', 'lot-7', '1', '--reason', 'x'],
  ['accept', 'lot-7', '--initials', 'AB'],
  ['pressure', '--press', 'North', '--assembly', 'WB-212', '--net', '225psi'],
  ['backup', join(folder, 'copy.db')],
  ['verify'],
];

describe('a mistyped --store', () => {
  it.each(READING.map((command) => [command.join(' '), command] as const))(
    '%s: told, and nothing is made',
    (_, command) => {
      const store = join(folder, 'mistyped.db');
      const { code, err } = runProgram([...command, '--store', store], {});
      expect({ code, err }).toMatchObject({ code: 2, err: expect.stringContaining('there is no store at') });
      expect(err).toContain('mistyped.db');
      expect(readdirSync(folder).filter((name) => /mistyped|copy/.test(name))).toEqual([]);
    },
  );
});

describe('before the first start', () => {
  it.each([
    ['trials', 'No trial yet'],
    ['recipes', 'No recipe yet'],
    ['presses', 'No press yet'],
    ['assemblies', 'No assembly yet'],
    ['probes', 'No probe yet'],
    ['layouts', 'No layout yet'],
    ['recordings', 'No recording yet'],
  ])('%s says there is none, and makes no store', (command, words) => {
    const store = join(folder, 'first', 'store.db');
    expect(runProgram([command], { DWELLWRIGHT_STORE: store })).toMatchObject({
      code: 0,
      out: expect.stringContaining(words),
    });
    expect(existsSync(join(folder, 'first'))).toBe(false);
  });
});

it('commands that enter something make the store', () => {
  const store = join(folder, 'made.db');
  expect(runProgram(['presses', 'North', '--bore', '200mm', '--store', store], {}).code).toBe(0);
  const opened = openStore({ path: store, readonly: true });
  expect(opened.presses().map((press) => press.name)).toEqual(['North']);
  opened.close();
});
