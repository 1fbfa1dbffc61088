import { spawnSync } from 'node:child_process';
import { closeSync, constants, createReadStream, mkdtempSync, openSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createTerminalWriter } from '../../../src/adapters/terminal/terminal-writer.ts';

/** A pipe that nobody reads stands for a terminal that stands still: writing to it blocks once its 64 KB are full. */
let folder: string;
let path: string;
let fd: number;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'dwellwright-writer-'));
  path = join(folder, 'terminal');
  expect(spawnSync('mkfifo', [path]).status).toBe(0);
  fd = openSync(path, constants.O_RDWR);
});
afterEach(() => {
  closeSync(fd);
  rmSync(folder, { recursive: true, force: true });
});

describe.skipIf(process.platform === 'win32')('createTerminalWriter', () => {
  it('200 KB to a terminal that stands still: the program goes on at once, and all of it arrives afterwards', async () => {
    const writer = createTerminalWriter({ fd } as unknown as NodeJS.WriteStream);
    const text = Array.from({ length: 20_000 }, (_, i) => `${i}`.padStart(10)).join('');
    writer.write(text);
    writer.write('end');
    // A blocked event loop would never come here.
    expect(await writer.drained(50)).toBe(false);
    expect(writer.idle).toBe(false);
    let came = '';
    const reader = createReadStream(path, 'latin1');
    reader.on('data', (data) => {
      came += data;
    });
    expect(await writer.drained(10_000)).toBe(true);
    while (came.length < text.length + 3) await new Promise((resolve) => setImmediate(resolve));
    reader.destroy();
    // A blocking read of its own thread ends with the next byte.
    writer.write('x');
    expect(came.slice(0, text.length + 3)).toBe(`${text}end`);
  });

  it('a terminal that is gone is written to no more, and nobody waits for it', async () => {
    const writer = createTerminalWriter({ fd: 9999 } as unknown as NodeJS.WriteStream);
    writer.write('a');
    expect(await writer.drained(5_000)).toBe(true);
    writer.write('b');
    expect(writer.idle).toBe(true);
  });
});
