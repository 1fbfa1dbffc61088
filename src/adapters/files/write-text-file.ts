import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { writingError } from './FileError.ts';

/** Pieces are gathered to about this many characters before they are written. */
const GATHERED = 65_536;

/**
 * Writes a file from pieces of text (UTF-8) under another name beside it, puts it on disk, then gives it its name.
 * When anything fails, what was there before is unchanged and nothing is left behind. Throws a FileError.
 */
export function writeTextFile(path: string, pieces: Iterable<string>): void {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  let made = false;
  try {
    const file = openSync(beside, 'w');
    made = true;
    try {
      writePieces(file, pieces);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
  } catch (error) {
    if (made) rmSync(beside, { force: true });
    throw writingError(error, path);
  }
}

function writePieces(file: number, pieces: Iterable<string>): void {
  let gathered = '';
  for (const piece of pieces) {
    gathered += piece;
    if (gathered.length < GATHERED) continue;
    writeAll(file, gathered);
    gathered = '';
  }
  writeAll(file, gathered);
}

function writeAll(file: number, text: string): void {
  const bytes = Buffer.from(text, 'utf8');
  for (let from = 0; from < bytes.length; ) from += writeSync(file, bytes, from);
}
