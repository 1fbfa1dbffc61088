import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

const recordings = join(import.meta.dirname, '..', '..', 'recordings');
const runsOf = (press: string) =>
  [1, 2, 3, 4, 5].map((run) => join(recordings, `wb-212-${press}-run-${run}.dwell.txt`));

it('margins stated first are kept with their time and used, whichever press comes first; stated late is said', () => {
  const store = join(temporaryFolder(), 'store.db');
  const margins = runProgram([
    'margins',
    '--assembly',
    'WB-212',
    '--presses',
    'North,South',
    '--slower',
    '4s',
    '--faster',
    '2s',
    '--runs',
    '5',
    '--store',
    store,
    '--json',
  ]);
  expect(margins.code).toBe(0);
  // Nothing is known of the spread: margin 2 SD. Power of Welch's intervals at n = 5 by scipy integration: 76.4 %.
  expect(JSON.parse(margins.out)).toMatchObject({ marginInSd: 2, runToRunSdS: null });
  expect(JSON.parse(margins.out).power).toBeCloseTo(0.764, 2);

  const compare = (first: string, second: string, ...more: readonly string[]) =>
    runProgram([
      'compare',
      '--of',
      'trials',
      '--first',
      ...runsOf(first),
      '--second',
      ...runsOf(second),
      '--store',
      store,
      '--json',
      ...more,
    ]);
  const straight = JSON.parse(compare('north', 'south').out);
  expect(straight).toMatchObject({ marginsStated: 'before' });
  const turned = JSON.parse(compare('south', 'north').out);
  expect(turned.marginsStatedAt).toBe(straight.marginsStatedAt);
  const late = JSON.parse(compare('north', 'south', '--slower', '4s', '--faster', '2s').out);
  expect(late.marginsStated).toBe('with-the-data');
});
