import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

const recordings = join(import.meta.dirname, '..', '..', 'recordings');
const store = join(temporaryFolder(), 'store.db');
const south = [1, 2, 3, 4, 5].map((run) => join(recordings, `wb-212-south-run-${run}.dwell.txt`));
const recheck = (...args: readonly string[]) => runProgram(['recheck', ...args, '--store', store]);

describe('recheck', () => {
  beforeAll(() => {
    expect(runProgram(['demo', '--store', store]).code).toBe(0);
  });

  it('the recipe of the demo holds on its own runs; old and new are the same, twice (decoded, then kept)', () => {
    for (const _ of [1, 2]) {
      const { code, out } = recheck('--json');
      expect(code).toBe(0);
      const result = JSON.parse(out);
      expect(result.verdict).toBe('holds');
      expect(result.counts).toMatchObject({ lookedAt: 5, comparable: 5, holdMet: 5 });
      for (const run of result.runs) expect(run.before.soakTimeS).toBe(run.soakTimeS);
      expect(result.now.dwell.totalS).toBe(174);
    }
  });

  it('what if: a higher target takes longer, and runs opened before its hold was done still count', () => {
    const { byTarget } = JSON.parse(recheck('--targets', '320F,350F,380F', '--json').out);
    expect(byTarget.map((row: { runs: number }) => row.runs)).toEqual([5, 5, 5]);
    const dwells = byTarget.map((row: { meanDwellS: number }) => row.meanDwellS);
    expect(dwells).toEqual([...dwells].sort((a, b) => a - b));
    expect(recheck('--targets', '320F,350F').out).toMatch(/Dwell against target/);
  });

  // South soaks slower by the simulator's making (see its recordings' truth): North's dwell does not cover it.
  it('North’s recipe does not hold on runs of South: exit 1, with the runs that fall short', () => {
    const { code, out } = recheck(...south, '--json');
    expect(code).toBe(1);
    expect(JSON.parse(out).verdict).toBe('does-not-hold');
  });

  // The fifth of the demo's runs soaks longest: 174 s less its soak time is less than 121 s (by hand from --json).
  it('--hold asks whether the dwell leaves that hold, and runs opened before it count', () => {
    const { code, out } = recheck('--hold', '130s', '--json');
    const result = JSON.parse(out);
    expect([code, result.verdict, result.counts.comparable]).toEqual([1, 'does-not-hold', 5]);
    for (const run of result.runs) expect(run.holdMet).toBe(174 - run.soakTimeS >= 130);
    expect(result.now.dwell.totalS).toBe(184);
  });

  it('--version is the recipe’s, wherever it stands', () => {
    expect(JSON.parse(recheck('--version', '1', '--json').out).recipe.version).toBe(1);
    const { code, err } = recheck('--version', '7');
    expect([code, err]).toEqual([2, expect.stringMatching(/no such recipe/)]);
  });

  it('the same recording given twice counts once', () => {
    expect(JSON.parse(recheck(...south, south[0] as string, '--json').out).counts.lookedAt).toBe(5);
  });

  it('another logger’s file is compared once its closing is given, and one without a unit is refused', () => {
    const folder = temporaryFolder();
    const file = join(folder, 'logger.csv');
    // First order with 30 s about a delay of 3 s after a closing at 22 s, from 24 °C towards 203.5 °C, hold of 150 s seen.
    const lines = Array.from({ length: 2300 }, (_, index) => {
      const timeS = index / 10;
      return `${timeS},${(24 + 179.5 * (1 - Math.exp(-Math.max(0, timeS - 25) / 30))).toFixed(2)}`;
    });
    writeFileSync(file, ['time_s,Temp (°C)', ...lines, ''].join('\n'));
    const marked = JSON.parse(recheck(file, '--closed-at', '22s', '--json').out);
    expect(marked.runs[0].reasonCodes).not.toContain('from-onset');
    writeFileSync(file, ['time_s,T1', ...lines, ''].join('\n'));
    expect(recheck(file, '--closed-at', '22s')).toMatchObject({
      code: 2,
      err: expect.stringMatching(/--unit/),
    });
  });

  it('no recipe: exit 2 with what to do', () => {
    const { code, err } = runProgram(['recheck', ...south]);
    expect(code).toBe(2);
    expect(err).toMatch(/no such recipe/);
  });
});
