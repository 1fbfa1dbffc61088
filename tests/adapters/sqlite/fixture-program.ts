import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** Makes a small program of `fixtures/` ready to run in a process of its own: `node FILE …` with `env`. */
export async function fixtureProgram(
  name: string,
): Promise<{ readonly file: string; readonly env: NodeJS.ProcessEnv }> {
  const file = join(mkdtempSync(join(tmpdir(), 'dwellwright-fixture-')), `${name}.cjs`);
  await build({
    entryPoints: [fileURLToPath(new URL(`./fixtures/${name}.ts`, import.meta.url))],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    external: ['better-sqlite3'],
    outfile: file,
    logLevel: 'error',
  });
  const packages = fileURLToPath(new URL('../../../node_modules', import.meta.url));
  return { file, env: { ...process.env, NODE_PATH: packages } };
}
