import { join } from 'node:path';
import { expect, it } from 'vitest';
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

it('shows READY in block letters on a pseudo-terminal; Q leaves with the recording kept', async () => {
  const store = join(temporaryFolder(), 'store.db');
  const screen = new TerminalProgram(PROGRAM, [...LIVE, '--speed', '1000', '--store', store], {
    cols: 80,
    rows: 24,
  });
  try {
    await screen.see(/Not READY: upper platen/);
    await screen.see(/READY: every platen inside its band for/);
    expect(screen.screen).toContain('SIMULATED');
    await screen.key('q');
    await screen.see(/READY was reached. Kept as recording/);
  } finally {
    screen.kill();
  }
}, 30_000);
