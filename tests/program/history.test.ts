import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

it('three demo trials of the same making give three equal points; one trial is too few', () => {
  const store = join(temporaryFolder(), 'store.db');
  const history = (...more: readonly string[]) =>
    runProgram(['history', '--assembly', 'WB-212', '--press', 'North', '--store', store, ...more]);
  const demo = () => expect(runProgram(['demo', '--runs', '2', '--store', store]).code).toBe(0);
  demo();
  expect(history().code).toBe(2);
  expect(history().err).toMatch(/two are needed/);
  demo();
  demo();
  const { code, out } = history('--json');
  const chart = JSON.parse(out);
  expect(code).toBe(0);
  expect(chart.points).toHaveLength(3);
  expect(chart.provisional).toBe(true);
  // The simulator makes the same parts each time (same seed); a point's place in the recording moves it by dust only.
  for (const point of chart.points) expect(point.meanSoakS).toBeCloseTo(chart.centreS, 6);
  expect(history().out).toMatch(/Provisional: fewer than 20 trials/);
});
