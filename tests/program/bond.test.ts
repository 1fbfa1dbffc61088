import { cpSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { PROGRAM, runProgram, temporaryFolder } from './run-program.ts';

const folder = temporaryFolder();
beforeAll(() => {
  const args = ['demo', '--plain', '--speed', '200', '--runs', '2'];
  expect(runProgram([...args, '--store', join(folder, 'store.db')]).code).toBe(0);
}, 60_000);

/** A store of its own with the demo's recipe. */
/** A copy of it; named as the demo's own store where it is bonded with from the home. */
function demoStore(name = 'store.db'): string {
  const own = temporaryFolder();
  cpSync(folder, own, { recursive: true });
  renameSync(join(own, 'store.db'), join(own, name));
  return join(own, name);
}

it('bonds with the demo’s recipe on the simulated reader, then by hand on a pseudo-terminal, and lists both cycles', async () => {
  const store = demoStore();
  const bond = ['bond', '--assembly', 'WB-212', '--press', 'North', '--store', store];
  const ended = runProgram([...bond, '--simulated', '--speed', '200', '--stop-after', '1', '--json']);
  expect(ended.code).toBe(0);
  const [cycle] = JSON.parse(ended.out).cycles;
  // The simulated press stays closed for the usual time, longer than hold and soak: seen whole by the probe.
  expect(cycle).toMatchObject({ closedBy: 'contact', hold: 'verified', simulated: true });
  const screen = new TerminalProgram(PROGRAM, [...bond, '--no-reader', '--simulated'], {
    cols: 80,
    rows: 24,
  });
  try {
    await screen.see(/read and understood/);
    await screen.key('\r');
    await screen.see(/press closed/);
    await screen.key('c');
    await screen.see(/Closed for/);
    await new Promise((resolve) => setTimeout(resolve, 1200));
    await screen.key('o');
    await screen.see(/U takes the opening back/);
    await screen.see(/OPENED EARLY, closed/);
    expect(screen.screen).toContain('SIMULATED');
    await screen.key('q');
  } finally {
    screen.kill();
  }
  const { cycles } = JSON.parse(runProgram(['bond', '--cycles', '--json', '--store', store]).out);
  expect(cycles.map((one: { hold: string }) => one.hold)).toEqual(['verified', 'not-measured']);
  expect(cycles[1].result).toBe('opened-early');
}, 40_000);

it('from the home: B, choose, C, O, a second closing left on purpose, both read back from the records and by a command', async () => {
  const store = demoStore('store-demo.db');
  const screen = new TerminalProgram(PROGRAM, ['--store', store], { cols: 80, rows: 24 });
  try {
    await screen.see(/Bonding +timer/);
    await screen.key('b');
    await screen.see(/read and understood/);
    await screen.key('\r');
    await screen.see(/Which recipe/);
    await screen.key('1');
    await screen.see(/dwell from press closed/);
    expect(screen.screen).toContain('SIMULATED');
    await screen.key('c');
    await screen.see(/Closed for [1-9]/);
    await screen.key('o');
    await screen.see(/Logged: OPENED EARLY, closed/);
    await screen.key('c');
    await screen.see(/Closed for [1-9]/);
    await screen.key('q');
    await screen.see(/Leave\?/);
    await screen.key('y');
    await screen.see(/Records +trials/);
    await screen.key('r');
    await screen.see(/cycles/);
    await screen.key('c');
    await screen.see(/WB-212.*not watched[\s\S]*WB-212.*opened early/);
    await screen.key('\r');
    await screen.see(/program left before the opening was seen/);
    await screen.key('\u001b');
    await screen.see(/Records: cycles/);
    await screen.key('\u001b');
    await screen.see(/Records: trials/);
  } finally {
    screen.kill();
  }
  const { cycles } = JSON.parse(runProgram(['bond', '--cycles', '--json', '--store', store]).out);
  expect(cycles).toMatchObject([
    { result: 'opened-early', hold: 'not-measured', recordingId: null },
    { result: 'left', flags: ['left'] },
  ]);
  const listed = runProgram(['bond', '--cycles', '--store', store]).out.trim().split('\n');
  expect(listed).toHaveLength(2);
  expect(listed[1]).toMatch(/NOT WATCHED TO THE END, watched for/);
}, 40_000);

it('platens alone on the simulated reader: time and platens, the hold not measured', () => {
  const store = demoStore();
  const roles = 'unused,unused,upper-platen,lower-platen';
  const bond = ['bond', '--assembly', 'WB-212', '--press', 'North', '--store', store, '--simulated'];
  const { out, code } = runProgram([
    ...bond,
    ...['--roles', roles, '--speed', '200', '--stop-after', '1', '--json'],
  ]);
  expect(code).toBe(0);
  const [cycle] = JSON.parse(out).cycles;
  expect(cycle).toMatchObject({ closedBy: 'contact', hold: 'not-measured', againstBand: 'not-compared' });
  expect(cycle.platensAtClosingC.upper).toBeGreaterThan(200);
}, 40_000);

it('a probe that reads 5 °C too high, by its calibration, is corrected as in a trial: the peak logged is 5 °C lower', () => {
  const store = demoStore();
  const bond = ['bond', '--assembly', 'WB-212', '--press', 'North', '--store', store, '--simulated'];
  const once = ['--speed', '200', '--stop-after', '1', '--json'];
  const peak = (args: readonly string[]) =>
    JSON.parse(runProgram([...bond, ...once, ...args]).out).cycles[0].peakC;
  const plain = peak([]);
  const points = ['20C', '120C', '240C'].flatMap((at) => ['--point', `${at}:5C:0.5C:2026-03-01`]);
  expect(runProgram(['probes', 'K-07', '--type', 'K', ...points, '--store', store]).code).toBe(0);
  // Scattered by the reader's noise; the same simulated closing otherwise.
  expect(plain - peak(['--probes', 'K-07,K-07'])).toBeCloseTo(5, 0);
}, 60_000);

it('a recipe of simulated readings is refused at a real press: with --no-reader and from the home, with what to do', async () => {
  const store = demoStore();
  const bond = ['bond', '--assembly', 'WB-212', '--press', 'North', '--store', store, '--plain'];
  const refused = runProgram([...bond, '--no-reader']);
  expect(refused.code).toBe(2);
  expect(refused.err).toMatch(/rests on simulated readings[\s\S]*--simulated/);
  const screen = new TerminalProgram(PROGRAM, ['--store', store], { cols: 80, rows: 24 });
  try {
    await screen.see(/Bonding +timer/);
    await screen.key('b');
    await screen.see(/rests on simulated readings/);
  } finally {
    screen.kill();
  }
  expect(JSON.parse(runProgram(['bond', '--cycles', '--json', '--store', store]).out).cycles).toEqual([]);
}, 40_000);
