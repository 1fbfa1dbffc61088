import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { blockText } from '../../src/core/chart/block-text.ts';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { PROGRAM, runProgram, temporaryFolder } from './run-program.ts';

const LIVE = ['warm-up', '--live', '--simulated', '--press', 'North'];

it('records a simulated warm-up to READY; the kept recording gives READY at the same time when analysed', () => {
  const folder = temporaryFolder();
  const store = join(folder, 'store.db');
  const ended = runProgram([...LIVE, '--speed', '2000', '--plain', '--json', '--store', store]);
  expect(ended.err).toContain('READY: every platen inside its band for 5 min');
  expect(ended.code).toBe(0);
  const live = JSON.parse(ended.out);
  expect(live).toMatchObject({ ready: true, simulated: true, press: 'North', forS: 300 });
  // The simulation's own truth (head of the shipped recording, from its noise-free course): the lower platen stays inside
  // ±5 °F from 1296 s after power-on at 30 s; so READY 300 s later, at 1626 s. Noise and 0.25 °C steps: ±30 s allowed.
  expect(Math.abs(live.firstReadyAtS - 1626)).toBeLessThan(30);
  const file = join(folder, 'kept.dwell.txt');
  expect(runProgram(['recordings', live.recordingId, '--out', file, '--store', store]).code).toBe(0);
  const analysed = runProgram(['warm-up', file, '--json']);
  expect(analysed.code).toBe(0);
  const [warmUp] = JSON.parse(analysed.out).warmUps;
  expect(warmUp).toMatchObject({ press: 'North', sound: true, simulated: true });
  // The file's times count from power-on; both watches see the same readings.
  expect(warmUp.powerOnS + warmUp.readyAtS).toBeCloseTo(live.firstReadyAtS, 6);
}, 40_000);

it('ends with 1 when it was stopped before READY, the recording kept', () => {
  const store = join(temporaryFolder(), 'store.db');
  const ended = runProgram([...LIVE, '--speed', '100', '--seconds', '1s', '--json', '--store', store]);
  expect(ended.code).toBe(1);
  const { ready, recordingId } = JSON.parse(ended.out);
  expect(ready).toBe(false);
  expect(runProgram(['recordings', '--store', store]).out).toContain(recordingId.slice(0, 8));
}, 20_000);

it.each([
  [[], 'expected one reader'],
  [['--simulated', '--port', '/dev/none'], 'expected one reader'],
  [['--simulated'], 'no press named'],
])('refuses %j: %s', (more, message) => {
  const { code, err } = runProgram(['warm-up', '--live', ...more]);
  expect(code).not.toBe(0);
  expect(err).toContain(message);
});

it('shows READY in block letters on a pseudo-terminal; Q and Y leave with the recording kept', async () => {
  const store = join(temporaryFolder(), 'store.db');
  const screen = new TerminalProgram(PROGRAM, [...LIVE, '--speed', '1000', '--store', store], {
    cols: 80,
    rows: 24,
  });
  try {
    await screen.see(/read and understood/);
    await screen.key('\r');
    const ready = blockText('READY', { size: 'small', ascii: false });
    await screen.until('READY in block letters', ({ screen: now }) =>
      ready.every((row) => now.includes(row.trimEnd())),
    );
    expect(screen.screen).toContain('SIMULATED');
    expect(screen.screen).toContain('heaters on for');
    await screen.key('q');
    await screen.see(/Leave the warm-up\?/);
    await screen.key('y');
    await screen.see(/READY was reached. Kept as recording/);
  } finally {
    screen.kill();
  }
}, 30_000);

/** A store whose next trial is on North, with this reader; null: none chosen yet. */
function storeWithPlan(reader: string | null): string {
  const path = join(temporaryFolder(), 'store.db');
  runProgram(['presses', 'North', '--platens', '450F', '--store', path]);
  const store = openStore({ path });
  store.saveSetting('next-trial', JSON.stringify({ pressName: 'North', reader }));
  store.close();
  return path;
}

it('W on the home leads to the warm-up of the press chosen there, and leaving it back to the home', async () => {
  const screen = new TerminalProgram(PROGRAM, ['--speed', '100', '--store', storeWithPlan('simulated')]);
  try {
    await screen.see(/Warm-up\s+cold to READY/);
    await screen.key('w');
    await screen.see(/Warm-up of North/);
    await screen.see(/read and understood/);
    await screen.key('\r');
    await screen.see(/heaters on for/);
    await screen.key('q');
    await screen.see(/Leave the warm-up\?/);
    await screen.key('y');
    await screen.see(/Warm-up\s+cold to READY/);
  } finally {
    screen.kill();
  }
}, 30_000);

it('W on the home without a reader says what to do there, and names no option', async () => {
  const screen = new TerminalProgram(PROGRAM, ['--store', storeWithPlan(null)]);
  try {
    await screen.see(/Warm-up\s+cold to READY/);
    await screen.key('w');
    await screen.see(/no reader chosen yet\. Press S/);
    expect(screen.screen).not.toContain('--');
  } finally {
    screen.kill();
  }
}, 30_000);

it('readings are corrected by the probes’ calibrations, live and afterwards; the raw ones stay', () => {
  const withProbes = join(temporaryFolder(), 'store.db');
  // A probe that reads 1 °C high from 20 °C to 250 °C.
  const points = ['20C:1C:0.4C', '120C:1C:0.4C', '250C:1C:0.4C'].flatMap((point) => [
    '--point',
    `${point}:2026-03-01`,
  ]);
  expect(
    runProgram(['probes', 'HIGH', '--type', 'K', '--class', 'IEC 2', ...points, '--store', withProbes]).err,
  ).toBe('');
  const record = (store: string, ...more: readonly string[]) => {
    const live = JSON.parse(
      runProgram([...LIVE, '--speed', '2000', '--plain', '--json', '--store', store, ...more]).out,
    );
    const [one] = JSON.parse(
      runProgram(['warm-up', live.recordingId, '--store', store, '--json']).out,
    ).warmUps;
    return { live, start: one.platens[0].startC as number, analysed: one.powerOnS + one.readyAtS };
  };
  // Each store begins with the simulation's first day.
  const raw = record(join(temporaryFolder(), 'store.db'));
  const corrected = record(withProbes, '--probes', '-,-,HIGH,HIGH');
  // The same simulated readings (same seed); 1 °C less by the calibration.
  expect(corrected.start).toBeCloseTo(raw.start - 1, 6);
  // One degree less at the edge of the band: later READY, live as well as afterwards.
  expect(corrected.live.firstReadyAtS).toBeGreaterThan(raw.live.firstReadyAtS);
  expect(corrected.analysed).toBeCloseTo(corrected.live.firstReadyAtS, 6);
}, 40_000);

it('repeated simulated warm-ups are of other days; compare by press sets North and South side by side from the store', () => {
  const store = join(temporaryFolder(), 'store.db');
  const record = (press: string) =>
    runProgram([
      'warm-up',
      '--live',
      '--simulated',
      '--press',
      press,
      '--speed',
      '5000',
      '--plain',
      '--after-ready',
      '40min',
      '--json',
      '--store',
      store,
    ]);
  for (const press of ['North', 'North', 'South', 'South'])
    expect(record(press).err).not.toContain('what to do');
  const compared = JSON.parse(
    runProgram(['compare', '--first-press', 'North', '--second-press', 'South', '--json', '--store', store])
      .out,
  );
  expect(compared.leftOut).toEqual([]);
  const starts = compared.first.warmUps.map(
    (one: { platens: { startC: number }[] }) => one.platens[0]!.startC,
  );
  // Rooms of the two days: 23.5 and 21.8 °C as the simulation states them.
  expect(starts[0]).toBeCloseTo(23.5, 0);
  expect(starts[1]).toBeCloseTo(21.8, 0);
  // The platens' own truths: τ = C/h = 11000/4.4 = 2500 s and 11000/4.8 = 2291.7 s.
  const meanOf = (side: 'first' | 'second') =>
    compared[side].warmUps.map(
      (one: { platens: { timeConstantS: number }[] }) => one.platens[0]!.timeConstantS,
    );
  for (const timeConstantS of meanOf('first')) expect(Math.abs(timeConstantS - 2500)).toBeLessThan(20);
  for (const timeConstantS of meanOf('second')) expect(Math.abs(timeConstantS - 2291.7)).toBeLessThan(20);
}, 60_000);
