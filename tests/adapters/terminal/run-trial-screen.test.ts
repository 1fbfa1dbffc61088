import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { bundleFixture, TerminalProgram } from './terminal-program.ts';

let fixture: Awaited<ReturnType<typeof bundleFixture>>;
let program: TerminalProgram | null = null;

beforeAll(async () => {
  fixture = await bundleFixture('live-run');
});
afterEach(() => program?.kill());
afterAll(() => fixture.remove());

const start = (
  args: readonly string[] = [],
  size = { cols: 80, rows: 24 },
  env: Record<string, string> = {},
) => {
  program = new TerminalProgram(fixture.path, args, size, env);
  return program;
};

describe('trial screen on a real pseudo-terminal', () => {
  it('runs cautions, press closed, crossing, hold done, opened, verdict and quit by keys; one bell each; terminal restored', async () => {
    const screen = start();
    await screen.see(/no safety device/);
    await screen.key('c');
    expect(screen.screen).toMatch(/no safety device/);
    await screen.key('\r');
    await screen.see(/Key C at the moment/);
    expect(screen.screen).toContain('SIMULATED');
    await screen.key('c');
    await screen.see(/target in about \d+ s/);
    await screen.see(/soak time 5\d\.\d s/);
    await screen.see(/has had its hold/);
    await screen.key('o');
    await screen.see(/run 1: soak time 5\d\.\d\d s/, 20_000);
    expect(screen.screen).toMatch(/1 run counts|provisional/);
    await screen.key('q');
    await screen.see(/Leave the trial\?/);
    await screen.key('y');
    expect(await screen.ended()).toBe(0);
    expect(screen.output).toMatch(/left: quit, bells 2, cautions-acknowledged press-closed opened quit/);
    expect(screen.output.split('\u0007').length - 1).toBe(2);
    expect(screen.terminalRestored).toBe(true);
  });

  it('a scan of "cox" ended by Enter marks nothing', async () => {
    const screen = start();
    await screen.see(/no safety device/);
    await screen.key('\r');
    await screen.see(/Key C at the moment/);
    screen.pty.write('cox-12\r');
    await screen.see(/Scanned cox-12, but this trial is of/);
    screen.pty.write('\u0003');
    expect(await screen.ended()).toBe(0);
    expect(screen.output).toMatch(/left: interrupted, bells 0, cautions-acknowledged scan\s/);
    expect(screen.terminalRestored).toBe(true);
  });

  it('follows resizes to 120 × 36, to too small, and back, and never draws a frame as tall as the window', async () => {
    const screen = start();
    await screen.see(/no safety device/);
    await screen.key('\r');
    screen.pty.resize(120, 36);
    await screen.until(
      'a frame of 120 × 36',
      (p) => p.rows.filter((row) => row.length > 0).length > 20 && /upper platen/.test(p.screen),
    );
    screen.pty.resize(70, 20);
    await screen.see(/window is 70 × 20/);
    screen.pty.resize(80, 24);
    await screen.see(/SIMULATED/);
    // The lowest row of the window stays free: a frame as tall as the window would scroll.
    expect(screen.rows.at(-1)).toBe('');
    expect(screen.output).not.toContain('\u001b[3J'); // would erase what the terminal held before
    screen.pty.write('\u0003');
    expect(await screen.ended()).toBe(0);
  });

  it('a drawing error leaves a restored terminal, the error, and the program’s own exit code', async () => {
    const screen = start(['crash']);
    expect(await screen.ended()).toBe(3);
    expect(screen.output).toContain('failed: drawing failed');
    expect(screen.terminalRestored).toBe(true);
  });

  it('SIGTERM ends the screen in order: cursor shown, first page back, program goes on to its own end', async () => {
    const screen = start();
    await screen.see(/no safety device/);
    screen.pty.kill('SIGTERM');
    expect(await screen.ended()).toBe(0);
    expect(screen.output).toMatch(/left: stopped/);
    expect(screen.terminalRestored).toBe(true);
  });
});
