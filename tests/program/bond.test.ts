import { join } from 'node:path';
import { expect, it } from 'vitest';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { PROGRAM, runProgram, temporaryFolder } from './run-program.ts';

it('bonds with the demo’s recipe on the simulated reader, then by hand on a pseudo-terminal, and lists both cycles', async () => {
  const store = join(temporaryFolder(), 'store.db');
  runProgram(['demo', '--plain', '--speed', '200', '--runs', '2', '--store', store]);
  const bond = ['bond', '--assembly', 'WB-212', '--press', 'North', '--store', store];
  const ended = runProgram([...bond, '--simulated', '--speed', '200', '--stop-after', '1', '--json']);
  expect(ended.code).toBe(0);
  const [cycle] = JSON.parse(ended.out).cycles;
  // The simulated press stays closed for the usual time, longer than hold and soak: seen whole by the probe.
  expect(cycle).toMatchObject({ closedBy: 'contact', hold: 'verified', simulated: true });
  const screen = new TerminalProgram(PROGRAM, [...bond, '--no-reader'], { cols: 80, rows: 24 });
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
    expect(screen.screen).toContain('SIMULATED RECIPE');
    await screen.key('q');
  } finally {
    screen.kill();
  }
  const { cycles } = JSON.parse(runProgram(['bond', '--cycles', '--json', '--store', store]).out);
  expect(cycles.map((one: { hold: string }) => one.hold)).toEqual(['verified', 'not-measured']);
  expect(cycles[1].result).toBe('opened-early');
}, 40_000);
