import { spawn } from '@lydell/node-pty';

export interface FirstPicture {
  /** Median from the start of the program to its first picture over a pseudo-terminal, ms. */
  readonly medianMs: number;
  /** Median of a bare Node over the same pseudo-terminal in the same round, ms. */
  readonly bareMs: number;
}

/** Time to the first picture, each round beside a bare Node. `args` may hold a function for what must be new each time. */
export async function firstPicture(
  makeArgs: (round: number) => readonly string[],
  seen: RegExp,
  rounds = 15,
): Promise<FirstPicture> {
  const bare: number[] = [];
  const taken: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    bare.push(await untilSeen(['-e', '0'], null));
    taken.push(await untilSeen(makeArgs(round), seen));
  }
  return { medianMs: median(taken), bareMs: median(bare) };
}

/** Until the words stand on the screen, or (null) until the program ends. The program is then ended. */
function untilSeen(args: readonly string[], seen: RegExp | null): Promise<number> {
  return new Promise((resolve, reject) => {
    const startMs = performance.now();
    const child = spawn(process.execPath, [...args], { name: 'xterm-256color', cols: 80, rows: 24 });
    let text = '';
    let tookMs: number | null = null;
    child.onData((data) => {
      if (tookMs !== null) return;
      text += data;
      if (seen?.test(text) !== true) return;
      tookMs = performance.now() - startMs;
      child.kill('SIGTERM');
    });
    child.onExit(() => {
      if (seen !== null && tookMs === null) reject(new Error(`ended without its picture:\n${text}`));
      else resolve(tookMs ?? performance.now() - startMs);
    });
  });
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] as number;
}
