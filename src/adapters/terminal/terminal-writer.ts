import { write } from 'node:fs';

/** Text on its way to the terminal, handed over without ever waiting for it. */
export interface TerminalWriter {
  /** True when everything handed over has reached the terminal (or the terminal is gone). */
  readonly idle: boolean;
  write(text: string): void;
  /** Called each time everything handed over has arrived. */
  onIdle(listener: () => void): void;
  /** Waits until all has arrived, `withinMs` at most; false when the terminal still stands still. */
  drained(withinMs: number): Promise<boolean>;
}

const AGAIN_MS = 20;

/**
 * Writes to the terminal from a thread of its own. Node's own writes to a terminal wait for it: a terminal that stands
 * still (stopped output, a stuck connection) would then stop reading and storing as well.
 */
export function createTerminalWriter(stdout: NodeJS.WriteStream): TerminalWriter {
  const fd =
    process.platform !== 'win32' && 'fd' in stdout && typeof stdout.fd === 'number' ? stdout.fd : null;
  const listeners = new Set<() => void>();
  let waiting = '';
  let busy = false;
  let gone = false;

  function next(): void {
    if (busy) return;
    if (waiting === '' || gone) {
      waiting = '';
      for (const listener of listeners) listener();
      return;
    }
    const text = waiting;
    waiting = '';
    busy = true;
    if (fd === null) stdout.write(text, () => done());
    else writeAll(Buffer.from(text, 'utf8'), fd);
  }

  function writeAll(bytes: Buffer, to: number): void {
    write(to, bytes, (error, written) => {
      if (error?.code === 'EAGAIN') setTimeout(writeAll, AGAIN_MS, bytes, to);
      else if (error !== null) {
        // The window was closed: nobody sees what is left, and its signal ends the screen.
        gone = true;
        done();
      } else if (written < bytes.length) writeAll(bytes.subarray(written), to);
      else done();
    });
  }

  function done(): void {
    busy = false;
    next();
  }

  return {
    get idle() {
      return !busy && waiting === '';
    },
    write(text) {
      if (gone) return;
      waiting += text;
      next();
    },
    onIdle(listener) {
      listeners.add(listener);
    },
    drained(withinMs) {
      if (!busy && waiting === '') return Promise.resolve(true);
      return new Promise((resolve) => {
        const timer = setTimeout(() => resolve(false), withinMs);
        listeners.add(() => {
          clearTimeout(timer);
          resolve(true);
        });
      });
    },
  };
}
