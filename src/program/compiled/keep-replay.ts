import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { keepCompiled, runSource } from './compiled-module.ts';

/** Last step of the build: runs a shipped recording once and keeps the engine's code of what ran beside the program. */
const folder = dirname(fileURLToPath(import.meta.url));
const source = readFileSync(join(folder, 'replay.cjs'), 'utf8');
const compiled = runSource(folder, source);
const replay = compiled.exports.replay as (files: readonly string[], options: object) => Promise<void>;
const recording = join(folder, '..', 'recordings', 'wb-212-north-run-1.dwell.txt');
const write = process.stdout.write;
process.stdout.write = () => true;
await replay([recording], { rule: 'mean', margin: '0s', timerStep: '1s', show: 'F' });
process.stdout.write = write;
keepCompiled(folder, 'replay', source, compiled.code());
