import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * The three rings: the core knows no machine, adapters know the core and one machine each,
 * only the program joins them.
 */
const root = join(import.meta.dirname, '..');
const machines = ['node:', 'serialport', '@serialport/', 'better-sqlite3', 'ink', 'react'];

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name));
}

function importsOf(text: string): string[] {
  const pattern = /(?:\bfrom\s*|\bimport\s*\(?\s*)['"]([^'"]+)['"]/g;
  return [...text.matchAll(pattern)].map((match) => match[1] as string);
}

function importsOfFile(file: string): string[] {
  return importsOf(readFileSync(join(root, file), 'utf8')).map((name) =>
    name.startsWith('.') ? relative(root, join(root, file, '..', name)) : name,
  );
}

const isMachine = (name: string): boolean =>
  machines.some(
    (machine) =>
      name === machine ||
      name.startsWith(machine.endsWith(':') || machine.endsWith('/') ? machine : `${machine}/`),
  );

describe('the three rings', () => {
  it('finds imports of every form', () => {
    expect(importsOf("import a from 'x'; import 'y'; await import('z'); export { b } from './w.ts'")).toEqual(
      ['x', 'y', 'z', './w.ts'],
    );
    expect(
      isMachine('node:fs') && isMachine('ink') && isMachine('react/jsx-runtime') && !isMachine('ink-more'),
    ).toBe(true);
  });

  it('has a core to look at', () => {
    expect(sources('src/core').length).toBeGreaterThan(10);
  });

  it.each(sources('src/core'))('%s knows no machine and nothing outside the core', (file) => {
    const wrong = importsOfFile(file).filter(
      (name) => isMachine(name) || (name.startsWith('src/') && !name.startsWith('src/core/')),
    );
    expect(wrong).toEqual([]);
  });

  it.each(sources('src/adapters'))('%s reaches into no other adapter and not into the program', (file) => {
    const own = file.split('/').slice(0, 3).join('/');
    const wrong = importsOfFile(file).filter(
      (name) => name.startsWith('src/') && !name.startsWith('src/core/') && !name.startsWith(`${own}/`),
    );
    expect(wrong).toEqual([]);
  });
});
