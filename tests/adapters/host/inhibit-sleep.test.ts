import { chmodSync, existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, expect, it, vi } from 'vitest';
import { inhibitSleep } from '../../../src/adapters/host/inhibit-sleep.ts';

afterEach(() => vi.unstubAllEnvs());

/** A folder with a stand-in for the system's command, which writes what it was asked and waits to be ended. */
function standIn(name: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'inhibit-'));
  const file = join(folder, name);
  writeFileSync(
    file,
    `#!/bin/sh\necho "$@" > ${folder}/asked\ntrap 'echo ended > ${folder}/ended; exit' TERM\nwhile :; do sleep 0.02; done\n`,
  );
  chmodSync(file, 0o755);
  vi.stubEnv('PATH', `${folder}:${process.env.PATH}`);
  return folder;
}

async function until(file: string): Promise<string> {
  for (let tries = 0; tries < 400; tries += 1) {
    if (existsSync(file) && readFileSync(file, 'utf8') !== '') return readFileSync(file, 'utf8');
    await wait(10);
  }
  throw new Error(`${file} never came`);
}

it.skipIf(process.platform === 'win32').each([
  ['linux', 'systemd-inhibit'],
  ['darwin', 'caffeinate'],
] as const)(
  '%s is asked through %s to stay awake as long as this process lives, until released',
  async (platform, name) => {
    const folder = standIn(name);
    const release = inhibitSleep(platform);
    expect(await until(join(folder, 'asked'))).toContain(String(process.pid));
    release();
    expect(await until(join(folder, 'ended'))).toBe('ended\n');
  },
);

it('a system without such a command records all the same', async () => {
  vi.stubEnv('PATH', mkdtempSync(join(tmpdir(), 'empty-')));
  for (const platform of ['linux', 'win32'] as const) {
    const release = inhibitSleep(platform);
    await wait(50);
    release();
  }
});
