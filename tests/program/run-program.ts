import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The built program; `npm test` builds it before the tests run. */
export const PROGRAM = join(import.meta.dirname, '..', '..', 'dist', 'dwellwright.js');
if (!existsSync(PROGRAM)) throw new Error('build the program first: npm run build');

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the program to its end; its store and data folder are a fresh temporary folder unless the options say otherwise. */
export function runProgram(
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
  input = '',
): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...args], {
    encoding: 'utf8',
    input,
    env: { ...process.env, DWELLWRIGHT_STORE: join(temporaryFolder(), 'store.db'), ...environment },
  });
  return { code: status, out: stdout, err: stderr };
}

/** Starts the program and leaves it running. */
export function startProgram(args: readonly string[], environment: Readonly<Record<string, string>> = {}) {
  const child = spawn(process.execPath, [PROGRAM, ...args], { env: { ...process.env, ...environment } });
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk) => {
    out += chunk;
  });
  child.stderr.on('data', (chunk) => {
    err += chunk;
  });
  const ended = new Promise<Ended>((resolve) => child.on('close', (code) => resolve({ code, out, err })));
  return {
    child,
    ended,
    get out() {
      return out;
    },
    get err() {
      return err;
    },
  };
}

export const temporaryFolder = (): string => mkdtempSync(join(tmpdir(), 'dwellwright-test-'));

/** Waits until `done` holds, looking every 20 ms; rejects with what it waited for after `longestMs`. */
export async function until(what: string, done: () => boolean, longestMs = 20_000): Promise<void> {
  const startMs = performance.now();
  while (!done()) {
    if (performance.now() - startMs > longestMs)
      throw new Error(`waited ${longestMs} ms in vain for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
