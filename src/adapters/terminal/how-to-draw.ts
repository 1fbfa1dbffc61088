import type { Colours } from './palette.ts';

/** What a terminal can show. */
export interface Drawing {
  readonly colours: Colours;
  readonly ascii: boolean;
}

/** Terminals without colour, and those whose letters are a code page's: no Braille for the chart. */
const NO_COLOUR = /^(vt[1-4]\d\d|ansi-m|dumb)/u;
const FEW_LETTERS = /^(linux|vt\d\d\d|ansi|dumb|cons25|sun)/u;

/**
 * What is wanted, as far as the terminal can show it. Colours: none where the terminal has none, 256 where its name or
 * COLORTERM says so and on Windows 10 and later, else 16. Letters: ASCII where the terminal or its locale has few.
 */
export function howToDraw(
  wanted: { readonly colour: boolean; readonly ascii: boolean },
  env: Readonly<Record<string, string | undefined>>,
  platform: string,
): Drawing {
  const name = env.TERM ?? '';
  const unicode = takesUnicode(env, platform) && (platform === 'win32' || !FEW_LETTERS.test(name));
  const rich =
    platform === 'win32' || /256|direct/u.test(name) || /truecolor|24bit/u.test(env.COLORTERM ?? '');
  const colours = !wanted.colour || NO_COLOUR.test(name) ? 'none' : rich ? '256' : '16';
  return { colours, ascii: wanted.ascii || !unicode };
}

/**
 * Whether letters beyond ASCII arrive whole: the locale is UTF-8 (LC_ALL before LC_CTYPE before LANG, none of them: the C
 * locale; POSIX.1-2017, 8.2). Windows has no locale in its environment and takes Unicode.
 */
export function takesUnicode(env: Readonly<Record<string, string | undefined>>, platform: string): boolean {
  return platform === 'win32' || /utf-?8/iu.test(env.LC_ALL || env.LC_CTYPE || env.LANG || 'C');
}
