import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { press } from './keyboard.ts';
import { PROGRAM, runProgram, temporaryFolder } from './run-program.ts';

let program: TerminalProgram | null = null;
afterEach(() => program?.kill());

const UTF8 = 'C.UTF-8';
const start = (args: readonly string[], env: Record<string, string>, size = { cols: 100, rows: 30 }) => {
  const store = join(temporaryFolder(), 'store.db');
  program = new TerminalProgram(PROGRAM, args, size, { DWELLWRIGHT_STORE: store, ...env });
  return { screen: program, store };
};

/**
 * Kinds of terminal as ssh and tmux hand them on, by TERM and locale. A real connection is tried by hand: `ssh localhost` with
 * each of these, its window resized, its client killed in the middle of a run.
 */
describe('kinds of terminal', () => {
  it.each([
    ['xterm-256color', UTF8, 'letters', /38;5;/],
    ['tmux-256color', UTF8, 'letters', /38;5;/],
    ['screen', UTF8, 'letters', /\[(?:1;)?3[15]m|\[2m/],
    ['linux', UTF8, 'ASCII', /\[2m/],
    ['vt100', UTF8, 'ASCII', null],
    ['xterm-256color', 'C', 'ASCII', /38;5;/],
    ['xterm-256color', 'en_US.ISO-8859-1', 'ASCII', /38;5;/],
  ] as const)('TERM=%s, locale %s: %s, the colours that it has', async (TERM, locale, letters, colours) => {
    const { screen } = start([], { TERM, LC_ALL: locale });
    await screen.see(/First use[\s\S]*quit/);
    const ascii = /^[ -~\n]*$/.test(screen.screen);
    expect(ascii).toBe(letters === 'ASCII');
    if (colours === null) expect(screen.output).not.toMatch(/\u001b\[(?:\d;)*3\d/);
    else expect(screen.output).toMatch(colours);
    screen.pty.write('\u0003');
    expect(await screen.ended()).toBe(0);
    expect(screen.terminalRestored).toBe(true);
  });

  it('TERM=dumb: plain lines, not one escape sequence, for the home and for a trial', async () => {
    const home = start([], { TERM: 'dumb' });
    expect(await home.screen.ended()).toBe(0);
    expect(home.screen.output).toMatch(/dwellwright demo/);
    expect(home.screen.output).not.toContain('\u001b');
    const trial = start(['trial', '--simulated', '--speed', '100', '--runs', '1'], { TERM: 'dumb' });
    await trial.screen.until('the end of the trial', (p) => p.exit !== null, 25_000);
    expect(trial.screen.output).toMatch(/press closed/);
    expect(trial.screen.output).not.toContain('\u001b');
  }, 40_000);
});

describe('printed lines', () => {
  it('in ASCII on a terminal whose locale has no more; in a pipe as they are', async () => {
    const args = [
      'pressure',
      '--ring-od',
      '212mm',
      '--ring-id',
      '168mm',
      '--bore',
      '200mm',
      '--net',
      '225psi',
    ];
    const { screen } = start(args, { LC_ALL: 'C' });
    expect(await screen.ended()).toBe(0);
    // 225 psi · (212² − 168²) / 200² = 94.05 psi (closed form).
    expect(screen.output).toMatch(/94(\.05)? psi/);
    expect(screen.output).toMatch(/mm\^2/);
    expect(screen.output).toMatch(/^[ -~\r\n]*$/);
    expect(runProgram(args, { LC_ALL: 'C' }).out).toMatch(/mm²/);
  });
});

describe('a terminal that stands still', () => {
  it('takes nothing for 8 s of a run (160 s of the press): all is stored, and then the screen shows the present', async () => {
    const { screen, store } = start(['trial', '--simulated', '--speed', '20', '--hold', '60s'], {
      LC_ALL: UTF8,
    });
    await press(screen, /no safety device/, '\r');
    await press(screen, /Ram gauge/, 'c');
    await screen.see(/closed \d+ s ago/);
    // Nobody reads the terminal's output any more: after a few frames its buffer is full.
    screen.pty.pause();
    const before = screen.output.length;
    await new Promise((resolve) => setTimeout(resolve, 8000));
    expect(screen.output.length).toBe(before);
    screen.pty.resume();
    await screen.until('what was held up', (p) => p.output.length > before);
    await new Promise((resolve) => setTimeout(resolve, 100));
    // Five draws a second would be 40 frames; those that found no room were never sent.
    expect(screen.output.slice(before).split('\u001b[?2026h').length).toBeLessThan(30);
    await screen.see(/has had its hold|closed ([2-9]|\d\d) min/);
    await screen.see(/ 0 lost/);
    screen.pty.write('\u0003');
    await screen.ended();
    expect(screen.terminalRestored).toBe(true);
    const [{ trialId }] = JSON.parse(runProgram(['trials', '--store', store, '--json']).out).trials;
    const { runs } = JSON.parse(runProgram(['replay', '--trial', trialId, '--store', store, '--json']).out);
    expect(runs[0].soakTimeS).toBeGreaterThan(51);
    expect(runs[0].soakTimeS).toBeLessThan(56);
    // A hold with a gap in its readings would not be verified.
    expect(runs[0].holdVerified).toBe(true);
  }, 40_000);
});
