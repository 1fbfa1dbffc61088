import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { press } from './keyboard.ts';
import { PROGRAM, runProgram, temporaryFolder, until } from './run-program.ts';

const SHELL = fileURLToPath(new URL('./fixtures/as-a-shell.mjs', import.meta.url));
const running: TerminalProgram[] = [];
afterEach(() => {
  for (const one of running.splice(0)) one.kill();
});

let demo: string;
beforeAll(() => {
  demo = join(temporaryFolder(), 'store.db');
  runProgram(['demo', '--store', demo, '--runs', '2']);
  const [{ trialId }] = JSON.parse(runProgram(['trials', '--store', demo, '--json']).out).trials;
  runProgram(['accept', trialId, '--initials', 'MK', '--store', demo]);
});

function start(store: string, args: readonly string[]): TerminalProgram {
  const screen = new TerminalProgram(SHELL, [PROGRAM, ...args], undefined, { DWELLWRIGHT_STORE: store });
  running.push(screen);
  return screen;
}

/** A fresh store with the demo's trial in it. */
function storeWithTrial(): string {
  const store = join(temporaryFolder(), 'store.db');
  runProgram(['backup', store, '--store', demo]);
  return store;
}

const SIMULATED = ['trial', '--simulated', '--speed', '15', '--hold', '20s'];

/** How each screen is come to, and what shows that it is there. */
const SCREENS: Readonly<
  Record<
    string,
    {
      readonly args: readonly string[];
      readonly way: readonly (readonly [RegExp, string])[];
      readonly there: RegExp;
    }
  >
> = {
  home: { args: [], way: [], there: /Recent trials/ },
  'set-up': { args: [], way: [[/Recent trials/, 's']], there: /Assemblies/ },
  question: {
    args: [],
    way: [
      [/Recent trials/, 's'],
      [/Assemblies/, 'r'],
    ],
    there: /Where is the reader/,
  },
  chart: {
    args: [],
    way: [
      [/Recent trials/, 'r'],
      [/Records: trials/, '\r'],
      [/5\d\.\d\d s/, '\r'],
    ],
    there: /at 5\d\.\d s from press closed/,
  },
  replay: {
    args: [],
    way: [
      [/Recent trials/, 'r'],
      [/Records: trials/, '\r'],
      [/5\d\.\d\d s/, 'p'],
      [/Replay how fast/, '3'],
    ],
    there: /REPLAY ×20/,
  },
  cautions: { args: SIMULATED, way: [], there: /no safety device/ },
  'ready check': { args: SIMULATED, way: [[/no safety device/, '\r']], there: /Ram gauge/ },
  run: {
    args: SIMULATED,
    way: [
      [/no safety device/, '\r'],
      [/Ram gauge/, 'c'],
    ],
    there: /closed \d+ s ago/,
  },
  bonding: {
    args: ['bond', '--no-reader', '--simulated'],
    way: [[/Before heat/, '\r']],
    there: /Which recipe/,
  },
  'bonding, dwell': {
    args: ['bond', '--no-reader', '--simulated', '--assembly', 'WB-212', '--press', 'North'],
    way: [
      [/Before heat/, '\r'],
      [/Bond line not measured/, 'c'],
    ],
    there: /Closed for/,
  },
  'warm-up': {
    args: ['warm-up', '--live', '--simulated', '--press', 'North'],
    way: [],
    there: /Warm-up of North[\s\S]*leave/,
  },
};

const WAYS: Readonly<Record<string, (screen: TerminalProgram) => void>> = {
  'Ctrl-C': (screen) => screen.pty.write('\u0003'),
  SIGTERM: (screen) => process.kill(pidOf(screen), 'SIGTERM'),
  SIGHUP: (screen) => process.kill(pidOf(screen), 'SIGHUP'),
};

const pidOf = (screen: TerminalProgram): number => Number(/pid (\d+)/.exec(screen.output)?.[1]);

async function leave(name: string, way: string): Promise<void> {
  const { args, way: keys, there } = SCREENS[name]!;
  const store = storeWithTrial();
  const screen = start(store, args);
  for (const [shows, key] of keys) await press(screen, shows, key);
  await screen.see(there, 25_000);
  WAYS[way]!(screen);
  await screen.until(`${name} left by ${way}`, (p) => /ended \w+ settings/.test(p.output), 20_000);
  expect(screen.output, `${name}, ${way}`).toMatch(/ended (0|1|SIGHUP) settings as before/);
  expect(screen.terminalRestored, `${name}, ${way}`).toBe(true);
  expect(screen.output).not.toMatch(/Assertion|Error:|did not expect/);
  // The store is whole.
  expect(runProgram(['verify', '--store', store]).code, `${name}, ${way}`).toBe(0);
}

/** Each way on the screens that matter most; on the others one way each, in turn, since all screens leave by the same code. */
const WHOLE = ['home', 'run', 'bonding, dwell'];
const waysOf = (name: string, at: number): readonly string[] => {
  const all = Object.keys(WAYS);
  return WHOLE.includes(name) ? all : [all[at % all.length] as string];
};

describe.skipIf(process.platform === 'win32')('leaving from outside', () => {
  it.each(Object.keys(SCREENS).map((name, at) => [name, waysOf(name, at)] as const))(
    '%s: left by %j, with the terminal’s settings as before, the first page back, the store whole',
    async (name, ways) => {
      await Promise.all(ways.map((way) => leave(name, way)));
    },
    60_000,
  );

  it('a closed window in the middle of a run keeps it; the next start offers to go on with the trial', async () => {
    const store = storeWithTrial();
    const screen = start(store, SIMULATED);
    await press(screen, /no safety device/, '\r');
    await press(screen, /Ram gauge/, 'c');
    await screen.see(/soak time 5\d\.\d s/, 25_000);
    const pid = pidOf(screen);
    // The window's end of the terminal is gone: the system hangs up.
    screen.pty.kill('SIGKILL');
    (screen.pty as unknown as { destroy(): void }).destroy();
    await until('the end of the program', () => !isRunning(pid));
    const trials = JSON.parse(runProgram(['trials', '--store', store, '--json']).out).trials;
    expect(trials.at(-1).closedAt).toBeNull();
    const { trialId } = trials.at(-1);
    const { runs } = JSON.parse(runProgram(['replay', '--trial', trialId, '--store', store, '--json']).out);
    expect(runs[0].crossingS - runs[0].pressClosedS).toBeGreaterThan(51);
    const next = start(store, []);
    await next.see(/still open/);
    await next.see(/X +close the open trial/);
  }, 60_000);
});

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}
