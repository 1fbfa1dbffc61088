import { transformSync } from 'esbuild';

export interface StringLiteral {
  /** What a template computes stands as "{}". */
  readonly text: string;
  /** Inside the brackets of `new SomethingError(…)`. */
  readonly ofError: boolean;
}

/** Every string, template and text between tags of a source file, without those of types and comments. */
export function stringLiterals(source: string, loader: 'ts' | 'tsx'): readonly StringLiteral[] {
  // Types, comments and tags are gone afterwards; strings stand in double quotes or in backticks.
  const { code } = transformSync(source, {
    loader,
    charset: 'utf8',
    legalComments: 'none',
    jsx: 'transform',
  });
  const reader = new LiteralReader(code);
  reader.read(0, false);
  return reader.found;
}

const REGEX = /\/(?:[^/\\\n[]|\\.|\[(?:[^\]\\\n]|\\.)*\])+\/[a-z]*/uy;
const BEFORE_REGEX = /(?:[=(,:[!&|?{};>\n]|return)\s*$/u;
const NEW_ERROR = /new \w*Error$/u;

class LiteralReader {
  readonly found: StringLiteral[] = [];
  private readonly code: string;
  /** Open round brackets; true for those of an error. */
  private readonly brackets: boolean[] = [];

  constructor(code: string) {
    this.code = code;
  }

  /** Reads from `at` (inside a template: to its closing brace) and returns where it stopped. */
  read(at: number, inTemplate: boolean): number {
    let depth = 0;
    let i = at;
    while (i < this.code.length) {
      const c = this.code[i] ?? '';
      if (c === '"' || c === "'") i = this.quoted(i);
      else if (c === '`') i = this.template(i);
      else if (c === '/' && BEFORE_REGEX.test(this.before(i))) {
        REGEX.lastIndex = i;
        i = REGEX.test(this.code) ? REGEX.lastIndex : i + 1;
      } else {
        if (c === '(') this.brackets.push(NEW_ERROR.test(this.before(i)));
        if (c === ')') this.brackets.pop();
        if (c === '}' && inTemplate && depth === 0) return i;
        if (c === '{') depth++;
        if (c === '}') depth--;
        i++;
      }
    }
    return i;
  }

  private before(at: number): string {
    return this.code.slice(Math.max(0, at - 60), at);
  }

  private keep(text: string): void {
    this.found.push({ text, ofError: this.brackets.includes(true) });
  }

  private quoted(at: number): number {
    const quote = this.code[at];
    let end = at + 1;
    while (this.code[end] !== quote) end += this.code[end] === '\\' ? 2 : 1;
    this.keep(this.code.slice(at + 1, end));
    return end + 1;
  }

  private template(at: number): number {
    let text = '';
    let i = at + 1;
    while (this.code[i] !== '`') {
      if (this.code[i] === '\\') {
        text += this.code.slice(i, i + 2);
        i += 2;
      } else if (this.code.startsWith('${', i)) {
        text += '{}';
        i = this.read(i + 2, true) + 1;
      } else text += this.code[i++];
    }
    this.keep(text);
    return i + 1;
  }
}
