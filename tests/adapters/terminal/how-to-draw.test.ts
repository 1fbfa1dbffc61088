import { describe, expect, it } from 'vitest';
import { howToDraw } from '../../../src/adapters/terminal/how-to-draw.ts';

const ALL = { colour: true, ascii: false };
const UTF = { LANG: 'en_US.UTF-8' };

describe('howToDraw', () => {
  it.each([
    ['xterm-256color', '256', false],
    ['tmux-256color', '256', false],
    ['screen-256color', '256', false],
    ['xterm', '16', false],
    ['screen', '16', false],
    ['linux', '16', true],
    ['vt100', 'none', true],
    ['vt220', 'none', true],
    ['', '16', false],
  ] as const)('TERM=%s in a UTF-8 locale: %s colours, ASCII %s', (TERM, colours, ascii) => {
    expect(howToDraw(ALL, { TERM, ...UTF }, 'linux')).toEqual({ colours, ascii });
  });

  it.each([
    [{}, true],
    [{ LANG: 'C' }, true],
    [{ LANG: 'en_US.ISO-8859-1' }, true],
    [{ LANG: 'C.UTF-8' }, false],
    [{ LANG: 'de_DE.utf8' }, false],
    [{ LC_CTYPE: 'UTF-8' }, false],
    // LC_ALL goes before all, LC_CTYPE before LANG; an empty one counts as not set (POSIX.1-2017, 8.2).
    [{ LC_ALL: 'C', LANG: 'en_US.UTF-8' }, true],
    [{ LC_ALL: '', LC_CTYPE: 'C', LANG: 'en_US.UTF-8' }, true],
    [{ LC_ALL: 'C.UTF-8', LANG: 'C' }, false],
  ])('locale %j: ASCII %s', (locale, ascii) => {
    expect(howToDraw(ALL, { TERM: 'xterm-256color', ...locale }, 'linux').ascii).toBe(ascii);
  });

  it('Windows has neither TERM nor locale: 256 colours, Unicode', () => {
    expect(howToDraw(ALL, {}, 'win32')).toEqual({ colours: '256', ascii: false });
  });

  it('COLORTERM=truecolor gives 256 to a terminal of another name', () => {
    expect(howToDraw(ALL, { TERM: 'xterm', COLORTERM: 'truecolor', ...UTF }, 'linux').colours).toBe('256');
  });

  it('never shows more than is wanted', () => {
    const least = { colour: false, ascii: true };
    expect(howToDraw(least, { TERM: 'xterm-256color', ...UTF }, 'linux')).toEqual({
      colours: 'none',
      ascii: true,
    });
  });
});
