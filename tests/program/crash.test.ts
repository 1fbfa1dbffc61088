import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { press } from './keyboard.ts';
import { PROGRAM, runProgram, temporaryFolder } from './run-program.ts';

const fixture = (name: string) => fileURLToPath(new URL(`./fixtures/${name}`, import.meta.url));
const running: TerminalProgram[] = [];
afterEach(() => {
  for (const one of running.splice(0)) one.kill();
});

/** The built program below a shell that compares the terminal's settings, with a fault put into its process. */
function start(fault: string, store: string): TerminalProgram {
  const screen = new TerminalProgram(
    fixture('as-a-shell.mjs'),
    [PROGRAM, 'trial', '--simulated'],
    undefined,
    {
      DWELLWRIGHT_STORE: store,
      DWELLWRIGHT_TEST_FAULT: fault,
      NODE_OPTIONS: `--import ${pathToFileURL(fixture('inject-fault.mjs')).href}`,
    },
  );
  running.push(screen);
  return screen;
}

describe('an exception that nobody expects, on the trial screen', () => {
  it.each(['drawing', 'reducer', 'callback'])(
    'in %s: the terminal is as before, a short message says what failed and where the data is, exit code 2',
    async (fault) => {
      const store = join(temporaryFolder(), 'store.db');
      const screen = start(fault, store);
      await press(screen, /no safety device/, '\r');
      await press(screen, /Ready check/, '\u001b');
      // The chart stands: readings have come.
      await screen.see(/target {2}/);
      screen.pty.write('n');
      await screen.see(/ended /);
      expect(screen.output).toContain('ended 2 settings as before');
      expect(screen.terminalRestored).toBe(true);
      const after = screen.output.slice(screen.output.lastIndexOf('\u001b[?1049l'));
      expect(after).toContain(`injected: ${fault}`);
      expect(after).toContain(`the data is in ${store}`);
      expect(after).toMatch(/go on with this trial: dwellwright trial --go-on \d{8}-\d{4}-/);
      expect(after).not.toMatch(/ at .*\.js:\d+/);
      // What had come before is in the store, and the trial is open to be gone on with.
      const { recordings } = JSON.parse(runProgram(['recordings', '--store', store, '--json']).out);
      expect(recordings).toHaveLength(1);
      const { trials } = JSON.parse(runProgram(['trials', '--store', store, '--json']).out);
      expect(trials[0].closedAt ?? null).toBeNull();
      expect(runProgram(['verify', '--store', store]).code).toBe(0);
    },
  );
});
