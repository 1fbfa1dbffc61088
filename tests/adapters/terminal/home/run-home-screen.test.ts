import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { bundleFixture, TerminalProgram } from '../terminal-program.ts';

let fixture: Awaited<ReturnType<typeof bundleFixture>>;
let program: TerminalProgram | null = null;
beforeAll(async () => {
  fixture = await bundleFixture('home-failure');
});
afterEach(() => program?.kill());
afterAll(() => fixture.remove());

const start = (): TerminalProgram => {
  program = new TerminalProgram(fixture.path);
  return program;
};

describe('home on a real pseudo-terminal', () => {
  it('ends with the failure of a wish, the terminal restored before anything is said', async () => {
    const screen = start();
    await screen.see(/Recent trials/);
    await screen.key('f');
    expect(await screen.ended()).toBe(2);
    expect(screen.terminalRestored).toBe(true);
    const back = screen.output.lastIndexOf('\u001b[?1049l');
    expect(screen.output.slice(back)).toContain('failed: the disk is gone');
  });

  it('draws only what changed: standing still sends nothing', async () => {
    const screen = start();
    await screen.see(/Recent trials/);
    await new Promise((resolve) => setTimeout(resolve, 300));
    const { length } = screen.output;
    await new Promise((resolve) => setTimeout(resolve, 1500));
    expect(screen.output.length).toBe(length);
    await screen.key('t');
    await screen.see(/Start a trial/);
    expect(screen.output.length).toBeGreaterThan(length);
  });

  it('Ctrl-C leaves at once and restores the terminal', async () => {
    const screen = start();
    await screen.see(/Recent trials/);
    screen.pty.write('\u0003');
    expect(await screen.ended()).toBe(0);
    expect(screen.terminalRestored).toBe(true);
  });
});
