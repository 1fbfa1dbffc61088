import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { createFramePainter } from '../../../src/adapters/terminal/frame-painter.ts';
import type { Colours } from '../../../src/adapters/terminal/palette.ts';
import { styledRowToAnsi } from '../../../src/adapters/terminal/styled-row-to-ansi.ts';
import { ALL_SCREENS } from './screens/all-screens.ts';
import { bundleFixture, TerminalProgram } from './terminal-program.ts';

/**
 * What the console host of Windows takes by its documentation ("Console Virtual Terminal Sequences": cursor positioning,
 * cursor visibility, text modification, text formatting with extended colours, alternate screen buffer). Mode 2026 is not in
 * it: Windows Terminal has it since 2025, and a terminal passes over private modes that it does not know.
 */
const DOCUMENTED = [
  /^\u001b\[\d+;\d+H$/, // CUP
  /^\u001b\[H$/,
  /^\u001b\[2J$/, // ED
  /^\u001b\[2K$/, // EL
  /^\u001b\[\?25[hl]$/, // DECTCEM
  /^\u001b\[\?1049[hl]$/,
  /^\u001b\[(?:0|1|4|7|1;4|1;7|3[15]|1;31|(?:1;)?38;5;\d{1,3})m$/, // SGR
];
const IGNORED = [/^\u001b\[\?2026[hl]$/];
/** Faint is not in the table of formats: only where there are no more than 16 colours, and then nothing rests on it. */
const FAINT = /^\u001b\[2m$/;

/** Everything in a terminal's input that is not a letter: escape sequences whole, other control characters one by one. */
function sequences(output: string): ReadonlySet<string> {
  return new Set(
    output.match(
      /\u001b\[[\d;?<>=]*[ -/]*[@-~]|\u001b[\]PX^_].*?(?:\u0007|\u001b\\)|\u001b.?|[\u0000-\u001a\u001c-\u001f\u007f-\u009f]/gsu,
    ) ?? [],
  );
}

const allowed = (sequence: string, colours: Colours): boolean =>
  [...DOCUMENTED, ...IGNORED, ...(colours === '256' ? [] : [FAINT])].some((one) => one.test(sequence));

describe('sequences sent to the terminal', () => {
  it.each(['none', '16', '256'] as const)(
    'every screen in %s colours: documented ones only, no other control character',
    (colours) => {
      let sent = '';
      const painter = createFramePainter({
        idle: true,
        write: (text) => {
          sent += text;
        },
        onIdle: () => {},
        drained: () => Promise.resolve(true),
      });
      for (const make of Object.values(ALL_SCREENS))
        painter.paint(
          make()
            .rows(80, 24, false)
            .map((row) => styledRowToAnsi(row, colours)),
        );
      const strange = [...sequences(sent)].filter((one) => !allowed(one, colours));
      expect(strange.map((one) => JSON.stringify(one))).toEqual([]);
      expect(sequences(sent).size).toBeGreaterThan(10);
    },
  );

  it('the list would tell: cursor shapes, titles, mouse, bracketed paste, scrollback erased', () => {
    for (const other of [
      '\u001b[3 q',
      '\u001b]0;title\u0007',
      '\u001b[?1000h',
      '\u001b[?2004h',
      '\u001b[3J',
      '\u001b[?1h',
    ])
      for (const found of sequences(other)) expect(allowed(found, '16')).toBe(false);
  });
});

describe('a whole session on a real pseudo-terminal', () => {
  let fixture: Awaited<ReturnType<typeof bundleFixture>>;
  let program: TerminalProgram | null = null;
  beforeAll(async () => {
    fixture = await bundleFixture('live-run');
  });
  afterEach(() => program?.kill());
  afterAll(() => fixture.remove());

  it('from the first page to the other and back: documented ones, the bell, and line ends of what is printed after it', async () => {
    const screen = new TerminalProgram(fixture.path);
    program = screen;
    await screen.see(/no safety device/);
    await screen.key('\r');
    await screen.key('c');
    await screen.see(/target in about \d+ s/);
    screen.pty.resize(100, 30);
    await screen.see(/soak time 5\d\.\d s/);
    screen.pty.write('\u0003');
    await screen.ended();
    const strange = [...sequences(screen.output)].filter(
      (one) => !allowed(one, '256') && !['\u0007', '\r', '\n'].includes(one),
    );
    expect(strange.map((one) => JSON.stringify(one))).toEqual([]);
    for (const needed of ['\u001b[?1049h', '\u001b[?1049l', '\u001b[?25l', '\u001b[?25h', '\u0007'])
      expect(screen.output).toContain(needed);
  });
});
