import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stringLiterals } from './string-literals.ts';

const SRC = join(import.meta.dirname, '..', 'src');
/** Help of an option: commander wants it beside the option. */
const LEFT_OUT = 'program/command-line/';

function filesUnder(folder: string): readonly string[] {
  return readdirSync(join(SRC, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/u.test(name))
    .map((name) => join(folder, name).split(sep).join('/'));
}

/** Words for people: two words or more, each of two letters or more. */
const SENTENCE = /\p{L}{2,}[,.:;’']? +[(“"]?\p{L}{2,}/u;

/** Sentences of a file; what failed and what to do stands where an error is made, and has a code. */
function sentences(source: string, loader: 'ts' | 'tsx'): readonly string[] {
  return stringLiterals(source, loader)
    .filter(({ text, ofError }) => !ofError && SENTENCE.test(text))
    .map(({ text }) => text);
}

/** Single words that stand outside, and why. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  // Names of tolerance classes as a person may type them: taken in, never shown.
  'program/options/parse-tolerance-class.ts': ['astm standard', 'astm special'],
};

describe('one catalogue of sentences for people: src/core/text', () => {
  const files = [
    ...filesUnder('adapters/terminal'),
    ...filesUnder('program').filter((file) => !file.startsWith(LEFT_OUT)),
    ...readdirSync(join(SRC, 'core'))
      .filter((name) => name.startsWith('screen') || name === 'bonding')
      .flatMap((name) => filesUnder(`core/${name}`)),
  ];

  it('scans the screens, what draws them, and the program', () => {
    expect(files.length).toBeGreaterThan(200);
  });

  it.each(files)('%s has no sentence of its own', (file) => {
    const source = readFileSync(join(SRC, file), 'utf8');
    const found = sentences(source, file.endsWith('x') ? 'tsx' : 'ts');
    expect(found.filter((text) => !(ALLOWED[file] ?? []).includes(text))).toEqual([]);
  });

  it('the scan finds strings, templates and text between tags; not comments, types, patterns and errors', () => {
    const source = `
      // A comment with words.
      type Name = 'two words' | 'other words';
      const one = "Press 'closed' now"; const two = \`mean \${a ? \`of all runs\` : 'not known yet'} here and now\`;
      const pattern = /some words "quoted here"/u;
      throw new OptionError(\`a bad \${'value given'} here\`, say('what to do'));
      const tags = <Text>Words between tags</Text>;`;
    expect(sentences(source, 'tsx')).toEqual([
      "Press 'closed' now",
      'of all runs',
      'not known yet',
      'mean {} here and now',
      'Words between tags',
    ]);
  });
});
