import { expect, it } from 'vitest';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { PROGRAM, runProgram, startProgram, until } from './run-program.ts';
import { shopWithRecipe } from './shop-with-recipe.ts';

const store = shopWithRecipe();
const BOND = ['bond', '--assembly', 'WB-212', '--press', 'North', '--store', store];
const cycles = () => JSON.parse(runProgram(['bond', '--cycles', '--json', '--store', store]).out).cycles;
const waited = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** A timer without a screen, a closing under way in it. */
async function closing(...args: readonly string[]) {
  const program = startProgram([...BOND, '--plain', ...args]);
  await until('the timer', () => program.out.includes('Ready: WB-212'));
  program.child.stdin.write('c\n');
  await until('the mark', () => program.out.includes('Press closed.'));
  return program;
}

it('a timer killed outright in a closing: the next start logs it as not watched to the end, once', async () => {
  const program = await closing('--no-reader');
  await waited(2500);
  program.child.kill('SIGKILL');
  await program.ended;
  const again = startProgram([...BOND, '--plain', '--no-reader', '--seconds', '1s']);
  const { out, code } = await again.ended;
  expect(code).toBe(0);
  expect(out).toMatch(
    /The program had stopped in a closing of WB-212 on North\. Logged: NOT WATCHED TO THE END, watched for \d/,
  );
  const all = cycles();
  expect(all).toHaveLength(1);
  expect(all[0]).toMatchObject({ result: 'left', closedBy: 'key', hold: 'not-measured' });
  expect(all[0].flags).toContain('program-stopped');
  // Watched for about two seconds and a half, known to a second.
  expect(all[0].dwellHeldS).toBeGreaterThan(0.9);
  expect(all[0].dwellHeldS).toBeLessThan(10);
  expect(cycles()).toHaveLength(1);
}, 30_000);

it('a closing of a timer that still runs is left to it', async () => {
  const before = cycles().length;
  const program = await closing('--no-reader');
  await waited(1500);
  expect(cycles()).toHaveLength(before);
  program.child.kill('SIGTERM');
  await program.ended;
  expect(cycles().slice(before)).toMatchObject([{ result: 'left', flags: expect.arrayContaining(['left']) }]);
}, 30_000);

it('killed outright with a reader after the hold was done: the hold is read back from the recording', async () => {
  const before = cycles().length;
  const program = startProgram([...BOND, '--plain', '--simulated', '--speed', '20']);
  await until('dwell done', () => program.out.includes('Dwell done'), 30_000);
  program.child.kill('SIGKILL');
  await program.ended;
  const [cycle] = cycles().slice(before);
  expect(cycle).toMatchObject({
    closedBy: 'contact',
    result: 'left',
    hold: 'verified',
    simulated: true,
  });
  expect(cycle.holdCountedS).toBeGreaterThanOrEqual(cycle.holdWantedS);
  expect(cycle.flags).toContain('program-stopped');
  expect(cycle.flags).not.toContain('hold-not-verified');
  expect(runProgram(['verify', '--store', store]).code).toBe(0);
}, 60_000);

it('a closed window (SIGHUP) logs the closing at once', async () => {
  const before = cycles().length;
  const screen = new TerminalProgram(PROGRAM, [...BOND, '--no-reader'], { cols: 80, rows: 24 });
  await screen.see(/read and understood|press closed/);
  await screen.key('\r');
  await screen.see(/press closed/);
  await screen.key('c');
  await screen.see(/Closed for/);
  screen.pty.kill('SIGHUP');
  await screen.until('ended', ({ exit }) => exit !== null);
  expect(cycles().slice(before)).toMatchObject([{ result: 'left' }]);
}, 30_000);

it('the home finds a closing that was killed on the screen, says so and has it in the log', async () => {
  const before = cycles().length;
  const screen = new TerminalProgram(PROGRAM, [...BOND, '--no-reader'], { cols: 80, rows: 24 });
  await screen.see(/press closed/);
  await screen.key('c');
  await screen.see(/Closed for [1-9]/);
  screen.pty.kill('SIGKILL');
  await screen.until('killed', ({ exit }) => exit !== null);
  const home = new TerminalProgram(PROGRAM, ['--store', store], { cols: 100, rows: 30 });
  try {
    await home.see(/The program had stopped in a closing of WB-212 on North/);
    await home.see(/NOT WATCHED TO THE END/);
    await home.key('q');
  } finally {
    home.kill();
  }
  expect(cycles().slice(before)).toMatchObject([{ result: 'left', flags: ['program-stopped'] }]);
}, 30_000);
