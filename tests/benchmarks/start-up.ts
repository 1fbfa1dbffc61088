import { spawnSync } from 'node:child_process';

/** Median wall time of a command, ms. */
export function medianMs(command: readonly string[], times = 11): number {
  const taken: number[] = [];
  for (let i = 0; i < times; i += 1) {
    const startMs = performance.now();
    const { status } = spawnSync(process.execPath, command, { stdio: 'ignore' });
    if (status !== 0) throw new Error(`${command.join(' ')} ended with ${status}`);
    taken.push(performance.now() - startMs);
  }
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)] as number;
}
