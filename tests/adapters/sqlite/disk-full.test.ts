import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect, test } from 'vitest';
import { fixtureProgram } from './fixture-program.ts';
import { temporaryFolder } from './samples.ts';

/** Mounts a disk of 4 MB, 2 MB of it taken by a file, and runs a program on it. */
const ON_SMALL_DISK = `
mount -t tmpfs -o size=4m tmpfs "$1" || exit 99
head -c 2000000 /dev/zero > "$1/filler" || exit 99
exec "$2" "$3" "$1/store.db" "$1/filler"`;

test('on a disk that runs full the trouble is told, recording goes on in memory, and once there is space all of it is on disk', async ({
  skip,
}) => {
  const folder = temporaryFolder();
  const program = await fixtureProgram('fill-the-disk');
  const given = ['-rm', 'sh', '-c', ON_SMALL_DISK, 'sh', folder, process.execPath, program.file];
  const run = spawnSync('unshare', given, { env: program.env, encoding: 'utf8' });
  rmSync(dirname(program.file), { recursive: true, force: true });
  const why = run.error?.message ?? run.stderr;
  skip(
    run.error !== undefined || run.status === 99 || /unshare/.test(run.stderr),
    `skipped: no small disk here: ${why}`,
  );

  expect(run.status, run.stderr).toBe(0);
  const troubles = run.stdout.match(/^trouble .*$/gm) ?? [];
  expect(troubles.length).toBeGreaterThan(0);
  expect(new Set(troubles)).toEqual(new Set(['trouble store-disk-full']));
  const [, recorded, stored, soundness] = /^recorded (\d+) stored (\d+) (\S+)$/m.exec(run.stdout) ?? [];
  expect(Number(recorded)).toBeGreaterThan(120);
  expect(stored).toBe(recorded);
  expect(soundness).toBe('sound');
});
