import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { lstatSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

const found = spawnSync('socat', ['-V']).status === 0;
/** A reason to skip on this machine, or null. In continuous integration nothing is skipped: the tests fail there instead. */
export const NO_PTY: string | null =
  found || process.env.CI ? null : 'skipped: socat, which makes the pseudo-terminal, is not installed';
if (NO_PTY !== null) console.warn(NO_PTY);

/** A reader at a pseudo-terminal: what the test writes comes out of the port at `path`. */
export interface PtyReader {
  readonly path: string;
  plugIn(): Promise<void>;
  /** As if the cable were pulled: the terminal is gone at once. */
  unplug(): Promise<void>;
  write(text: string): void;
  /** Bytes that wait for the port to take them. */
  readonly unsentBytes: number;
  /** All that the port received since it was plugged in. */
  received(): string;
  remove(): Promise<void>;
}

export function ptyReader(): PtyReader {
  const folder = mkdtempSync(join(tmpdir(), 'dwellwright-pty-'));
  const path = join(folder, 'reader');
  let socat: ChildProcess | null = null;
  let received = '';
  const unplug = async (): Promise<void> => {
    const ending = socat;
    socat = null;
    if (ending === null) return;
    const ended = new Promise((resolve) => ending.once('exit', resolve));
    ending.kill('SIGKILL');
    // A device's name goes with it; a killed socat leaves its link.
    rmSync(path, { force: true });
    await ended;
  };
  return {
    path,
    async plugIn() {
      received = '';
      const starting = spawn('socat', ['-', `PTY,link=${path},raw,echo=0`], {
        stdio: ['pipe', 'pipe', 'inherit'],
      });
      // Writing to a reader that was unplugged meanwhile is what these tests do.
      starting.stdin?.on('error', () => undefined);
      starting.stdout?.on('data', (chunk: Buffer) => {
        received += chunk.toString('latin1');
      });
      socat = starting;
      for (let tries = 0; lstatSync(path, { throwIfNoEntry: false }) === undefined; tries += 1) {
        if (tries > 400) throw new Error('socat made no pseudo-terminal within 4 s');
        await wait(10);
      }
    },
    unplug,
    write(text) {
      socat?.stdin?.write(text, 'latin1');
    },
    get unsentBytes() {
      return socat?.stdin?.writableLength ?? 0;
    },
    received: () => received,
    async remove() {
      await unplug();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
