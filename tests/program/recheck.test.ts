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

  it('no recipe: exit 2 with what to do', () => {
    const { code, err } = runProgram(['recheck', ...south]);
    expect(code).toBe(2);
    expect(err).toMatch(/no such recipe/);
  });
});
