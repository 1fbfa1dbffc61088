import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { runShortly } from './run-shortly.ts';

const LENGTH_BYTES = 4;
const BEFORE = '(function(exports,require,module){';
const AFTER = '\n})';

export interface CompiledModule {
  readonly exports: Readonly<Record<string, unknown>>;
  /** The engine's own code of what has run so far, for the next start. */
  code(): Buffer;
}

/**
 * A command bundled into one file with the engine's code of it, so that a short command need not compile what it runs.
 * The file holds length and text of the source (UTF-8), then the code; code of another engine is refused by the engine
 * and the source compiled. Null where the build left no such file.
 */
export function loadCompiled(folder: string, name: string): CompiledModule | null {
  const file = join(folder, `${name}.compiled`);
  if (!existsSync(file)) return null;
  const bytes = readFileSync(file);
  const end = LENGTH_BYTES + bytes.readUInt32LE(0);
  return runSource(folder, bytes.toString('utf8', LENGTH_BYTES, end), bytes.subarray(end));
}

/** Runs a bundled source, with code for it where there is some. */
export function runSource(folder: string, source: string, code?: Buffer): CompiledModule {
  runShortly();
  const filename = join(folder, 'compiled.cjs');
  const script = new Script(BEFORE + source + AFTER, {
    filename,
    ...(code === undefined ? {} : { cachedData: code }),
  });
  const module = { exports: {} };
  script.runInThisContext()(module.exports, createRequire(filename), module);
  return { exports: module.exports, code: () => script.createCachedData() };
}

/** Writes source and code into one file at once, so that they can never be of different builds. */
export function keepCompiled(folder: string, name: string, source: string, code: Buffer): void {
  const length = Buffer.alloc(LENGTH_BYTES);
  const text = Buffer.from(source, 'utf8');
  length.writeUInt32LE(text.length);
  const beside = join(folder, `${name}.${process.pid}.part`);
  writeFileSync(beside, Buffer.concat([length, text, code]));
  renameSync(beside, join(folder, `${name}.compiled`));
}
