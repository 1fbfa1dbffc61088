import { expect, it } from 'vitest';
import type {
  BondingEvent,
  BondingIntent,
  BondingJob,
  BondingState,
} from '../../../src/core/bonding/BondingState.ts';
import { bondingReducer } from '../../../src/core/bonding/bonding-reducer.ts';
import { startBonding } from '../../../src/core/bonding/start-bonding.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { bondingView } from '../../../src/core/screen-bonding/bonding-view.ts';
import { shellFrame } from '../../../src/core/screen-shell/shell-frame.ts';

const RECIPE = {
  assemblyName: 'WB-212',
  pressName: 'North',
  version: 3,
  dwellS: 174,
  holdS: 120,
  targetC: 176.7,
  leastRecoveryS: null,
  highestPeakC: null,
  simulated: false,
};
const JOB = {
  recipe: RECIPE,
  gaugePsi: 60,
  platenSetPointC: null,
  platenBandC: 2.8,
  band: [],
  bandToleranceC: 5,
  roles: null,
  readerName: null,
  simulated: false,
  speed: 1,
} as unknown as BondingJob;

function play(events: readonly (readonly [number, string | null])[]) {
  let state: BondingState = startBonding({
    choices: [],
    cautionsAcknowledged: true,
    unit: 'F',
    storePath: 's.db',
    nowUs: 0,
  });
  const intents: BondingIntent[] = [];
  const feed = (event: BondingEvent) => {
    const [next, wishes] = bondingReducer(state, event);
    state = next;
    intents.push(...wishes);
  };
  feed({ kind: 'prepared', job: JOB, atUs: 0 });
  for (const [atS, key] of events) {
    const atUs = atS * 1e6;
    if (key !== null) feed({ kind: 'input', input: { kind: 'character', character: key, atUs }, atUs });
    feed({ kind: 'tick', atUs: key === null ? atUs : atUs + 60_000 });
  }
  return { state, intents, kinds: intents.map(({ kind }) => kind) };
}
const cycle = (intents: readonly BondingIntent[]) => intents.find((one) => one.kind === 'log-cycle')?.facts;

it('held 175 s of 174 s is done, rings once at the dwell’s end and is logged 5 s after opening', () => {
  const { intents, kinds } = play([
    [10, 'c'],
    [183, null],
    [184.1, null],
    [184.3, null],
    [185, 'o'],
    [189, null],
    [191, null],
  ]);
  expect(kinds).toEqual(['mark', 'bell', 'mark', 'log-cycle']);
  expect(cycle(intents)).toMatchObject({ result: 'done', dwellHeldS: 175, hold: 'not-measured' });
});
it('100 s of 174 s is opened early', () => {
  expect(
    cycle(
      play([
        [10, 'c'],
        [110, 'o'],
        [116, null],
      ]).intents,
    ),
  ).toMatchObject({ result: 'opened-early', dwellHeldS: 100 });
});
it('the same key within 1 s is ignored, and U takes the opening, then the closing back', () => {
  expect(
    play([
      [10, 'c'],
      [10.5, 'o'],
    ]).state.under?.openedUs,
  ).toBeNull();
  expect(
    play([
      [10, 'c'],
      [20, 'o'],
      [22, 'u'],
      [40, null],
    ]).state.under,
  ).toMatchObject({ closedUs: 10e6, openedUs: null });
  expect(
    play([
      [10, 'c'],
      [12, 'u'],
    ]).state.under,
  ).toBeNull();
});
it.each([
  [80, 24],
  [120, 36],
])('at %i × %i every state fills one row less than the window and never commands', (columns, rows) => {
  for (const events of [
    [],
    [[10, 'c']],
    [
      [10, 'c'],
      [190, null],
    ],
    [
      [10, 'c'],
      [20, 'o'],
    ],
  ] as (readonly [number, string | null])[][])
    for (const ascii of [false, true]) {
      const frame = shellFrame(bondingView(play(events).state), { columns, rows, ascii }).map(rowText);
      expect(frame).toHaveLength(rows - 1);
      expect(frame.every((row) => row.length === columns)).toBe(true);
      expect(frame.join(' ')).not.toMatch(/open the press/i);
    }
});
