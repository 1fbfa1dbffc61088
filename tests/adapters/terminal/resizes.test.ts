import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { bundleFixture, TerminalProgram } from './terminal-program.ts';

let still: Awaited<ReturnType<typeof bundleFixture>>;
let live: Awaited<ReturnType<typeof bundleFixture>>;
const running: TerminalProgram[] = [];
beforeAll(async () => {
  [still, live] = await Promise.all([bundleFixture('show-state'), bundleFixture('live-run')]);
});
afterEach(() => {
  for (const one of running.splice(0)) one.kill();
});
afterAll(() => {
  still.remove();
  live.remove();
});

const start = (path: string, args: readonly string[], cols: number, rows: number): TerminalProgram => {
  const one = new TerminalProgram(path, args, { cols, rows });
  running.push(one);
  return one;
};

/** Numbers that look random and are the same each time (Park and Miller's generator). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

async function storm(screen: TerminalProgram, seed: number): Promise<void> {
  const next = numbers(seed);
  for (let i = 0; i < 60; i++) {
    screen.pty.resize(20 + Math.floor(next() * 181), 5 + Math.floor(next() * 56));
    await new Promise((resolve) => setTimeout(resolve, Math.floor(next() * 30)));
  }
}

describe('resizes on a real pseudo-terminal', () => {
  it('60 sizes from 20 × 5 to 200 × 60 within a second: afterwards each size shows what a fresh start at it shows', async () => {
    const screen = start(still.path, ['heating'], 80, 24);
    await screen.see(/WB-212/);
    for (const [seed, cols, rows] of [
      [1, 80, 24],
      [2, 200, 60],
      [3, 20, 5],
      [4, 120, 36],
    ] as const) {
      const fresh = start(still.path, ['heating'], cols, rows);
      await fresh.see(rows < 24 ? /window\s+is/ : /WB-212[\s\S]*quit/);
      await storm(screen, seed);
      screen.pty.resize(cols, rows);
      await screen.until(`the picture of ${cols} × ${rows}`, (p) => p.screen === fresh.screen);
      // A frame as tall as the window would scroll it.
      expect(screen.rows).toHaveLength(rows);
      expect(screen.rows.at(-1)).toBe('');
      expect(Math.max(...screen.rows.map((row) => row.length))).toBeLessThanOrEqual(cols);
      fresh.kill();
    }
    expect(screen.output).not.toContain('\u001b[3J');
  }, 60_000);

  it('in the middle of a run: the run goes on, keys work, the window tells when it is too small', async () => {
    const screen = start(live.path, [], 80, 24);
    await screen.see(/no safety device/);
    await screen.key('\r');
    await screen.key('c');
    await storm(screen, 5);
    screen.pty.resize(60, 15);
    await screen.see(/needs 80 × 24[\s\S]*Recording goes on/);
    await storm(screen, 6);
    screen.pty.resize(100, 30);
    await screen.see(/soak time 5\d\.\d s/, 20_000);
    await screen.see(/has had its hold/, 20_000);
    await screen.key('o');
    await screen.see(/run 1: soak time 5\d\.\d\d s/, 20_000);
    screen.pty.write('\u0003');
    expect(await screen.ended()).toBe(0);
    expect(screen.terminalRestored).toBe(true);
  }, 60_000);
});
