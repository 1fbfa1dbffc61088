import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { PROGRAM, runProgram, temporaryFolder } from './run-program.ts';

let program: TerminalProgram | null = null;
afterEach(() => program?.kill());

function start(
  store: string,
  args: readonly string[] = [],
  size = { cols: 80, rows: 24 },
  env: Record<string, string> = {},
) {
  program = new TerminalProgram(PROGRAM, args, size, { DWELLWRIGHT_STORE: store, ...env });
  return program;
}

async function keys(screen: TerminalProgram, ...all: readonly string[]): Promise<void> {
  for (const key of all) await screen.key(key);
}

/** One key, and what it must show. */
async function screenful(screen: TerminalProgram, key: string, shows: RegExp): Promise<void> {
  await screen.key(key);
  await screen.see(shows);
}

/** Types as a person does, then Enter. */
async function type(screen: TerminalProgram, text: string): Promise<void> {
  for (const character of text) {
    screen.pty.write(character);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  await screen.key('\r');
}

const json = (store: string, ...args: readonly string[]) =>
  JSON.parse(runProgram([...args, '--store', store, '--json']).out);

describe('from the first start on a real pseudo-terminal', () => {
  it('adds press, assembly and reader, holds a simulated trial, sets a run aside, opens its chart and leaves', async () => {
    const store = join(temporaryFolder(), 'store.db');
    const screen = start(store, ['--speed', '100']);
    await screen.see(/First use: name the press/);
    await screen.key('\r');
    await screen.see(/What is the press called/);
    await type(screen, 'North');
    await screen.see(/Bore of the ram/);
    await type(screen, '200');
    await screen.see(/Not taken: ram bore: "200" has no unit/);
    await keys(screen, '\u007f', '\u007f', '\u007f');
    await type(screen, '200 mm');
    await screen.see(/How many rams/);
    await screen.key('1');
    await screen.see(/Enter takes 450F/);
    await screen.key('\r');
    await screen.see(/One division of the gauge/);
    await type(screen, '2psi');
    await screen.see(/What is the assembly called/);
    // A scanner: all at once, ended by Enter.
    screen.pty.write('WB-212\r');
    await screen.see(/Outer diameter/);
    await type(screen, '212mm');
    await screen.see(/Inner diameter/);
    await type(screen, '168mm');
    await screen.see(/What is the carrier/);
    await type(screen, 'brake plate');
    await screen.see(/Enter takes 350F/);
    await screen.key('\r');
    await screen.see(/Enter takes 120 s/);
    await screen.key('\r');
    await screen.see(/Enter takes 200 to 250 psi/);
    await screen.key('\r');
    await screen.see(/Where is the reader/);
    await screen.key('s');
    await screen.see(/WB-212, target 350 °F \(176\.7 °C\), hold 120 s/);
    await screen.key('\r');

    await screen.see(/no safety device/);
    await keys(screen, '\r', '\u001b');
    await screen.see(/C\s+press closed/);
    await screenful(screen, 'c', /target in about|HOLD|closed \d+ s ago/);
    // Longer than soak and hold together (174 s).
    await screen.see(/closed ([3-9]|\d\d) min/, 30_000);
    await screen.key('o');
    // Simulator's truth: about 53.5 s of soak.
    await screen.see(/ 1\s+5\d\.\d s/, 30_000);
    await screen.key('q');
    await screen.see(/Leave the trial/);
    await screen.key('y');

    await screen.see(/SIMULATED/);
    await screen.see(/Recent trials/);
    await screenful(screen, 'r', /Records: trials/);
    await screenful(screen, '\r', /Trial of WB-212 on North/);
    await screen.see(/5\d\.\d\d s/);
    await screen.key('x');
    await type(screen, 'carrier was warm');
    await screen.see(/set aside\s+carrier was warm/);
    await screen.key('\r');
    await screen.see(/at 5\d\.\d s from press closed/);
    expect(screen.screen).toMatch(/B bond line 3[45]\d\.\d °F/);
    await keys(screen, '\u001b[C', '\u001b[A');
    await screen.key('h');
    await screen.see(/move the cursor/);
    await keys(screen, '\u001b', '\u001b', '\u001b', '\u001b');
    await screen.see(/Recent trials/);
    await screen.key('q');
    await screen.see(/Leave Dwellwright/);
    await screen.key('y');
    expect(await screen.ended()).toBe(0);
    expect(screen.terminalRestored).toBe(true);

    expect(json(store, 'presses').presses).toMatchObject([
      { name: 'North', ramBoreMm: 200, gaugeDivisionPsi: 2 },
    ]);
    expect(json(store, 'assemblies').assemblies).toMatchObject([
      {
        name: 'WB-212',
        ringOuterDiameterMm: 212,
        ringInnerDiameterMm: 168,
        carrier: 'brake plate',
        holdS: 120,
      },
    ]);
    const [trial] = json(store, 'trials').trials;
    expect(trial).toMatchObject({ assemblyName: 'WB-212', pressName: 'North', simulated: true });
    expect(trial.closedAt).not.toBeNull();
    expect(runProgram(['trials', trial.trialId, '--store', store]).out).toMatch(
      /set aside because: carrier was warm/,
    );
  }, 90_000);
});

describe('leaving and going on', () => {
  const demoStore = (): string => {
    const store = join(temporaryFolder(), 'store.db');
    runProgram(['demo', '--store', store, '--runs', '2']);
    return store;
  };

  it('Ctrl-C in a trial keeps it open; the next start goes on with it: a second recording in the same trial', async () => {
    const store = demoStore();
    const first = start(store, ['--speed', '20']);
    await first.see(/Recent trials/);
    await screenful(first, 't', /Start a trial/);
    await screenful(first, '3', /Where is the reader/);
    await first.key('s');
    await first.see(/simulated reader/);
    await first.key('\r');
    await first.see(/target 350 °F.*hold 120 s/);
    await new Promise((resolve) => setTimeout(resolve, 500));
    first.pty.write('\u0003');
    expect(await first.ended()).toBe(0);
    expect(first.terminalRestored).toBe(true);
    const open = json(store, 'trials').trials.at(-1);
    expect(open.closedAt).toBeNull();

    const second = start(store, ['--speed', '20']);
    await second.see(/still open/);
    await second.key('\r');
    await second.see(/Go on with a trial: WB-212 on North/);
    await second.key('\r');
    await second.see(/target 350 °F.*hold 120 s/);
    await keys(second, '\r', '\u001b', 'q');
    await second.see(/Leave the trial/);
    await second.key('y');
    await second.see(/Recent trials/);
    second.pty.write('\u0003');
    expect(await second.ended()).toBe(0);
    const gone = json(store, 'trials').trials;
    expect(gone).toHaveLength(2);
    expect(gone.at(-1).trialId).toBe(open.trialId);
    expect(gone.at(-1).closedAt).not.toBeNull();
    expect(gone.at(-1).recordingIds).toHaveLength(2);
  }, 60_000);

  it('a port that cannot be opened comes back to the home with the reason in full, and leaves no trial behind', async () => {
    const store = demoStore();
    const screen = start(store);
    await screen.see(/Recent trials/);
    await screenful(screen, 't', /Start a trial/);
    await screenful(screen, '3', /Where is the reader/);
    await screenful(screen, 'p', /Path of the port/);
    await type(screen, '/dev/no-such-port');
    await screenful(screen, '1', /What is each channel laid on/);
    await screenful(screen, '4', /3 upper platen/);
    await screen.key('\r');
    await screen.see(/no such port\. Check the plug/);
    await screen.see(/Recent trials/);
    screen.pty.write('\u0003');
    expect(await screen.ended()).toBe(0);
    for (const { closedAt } of json(store, 'trials').trials) expect(closedAt).not.toBeNull();
    expect(json(store, 'trials').trials).toHaveLength(1);
  }, 40_000);

  it.each(['SIGTERM', 'SIGHUP'] as const)('%s on the home restores the terminal', async (signal) => {
    const screen = start(demoStore());
    await screen.see(/Recent trials/);
    screen.pty.kill(signal);
    await screen.ended();
    expect(screen.terminalRestored).toBe(true);
    expect(screen.output).not.toMatch(/Assertion|Error/);
  });

  it('replays a stored run on the trial screen, marked as replay and as simulated, and stores nothing', async () => {
    const store = demoStore();
    const before = json(store, 'recordings').recordings;
    const screen = start(store);
    await screen.see(/Recent trials/);
    await screen.key('r');
    await screen.see(/Records: trials/);
    await screen.key('\r');
    await screen.see(/5\d\.\d\d s/);
    await screenful(screen, 'p', /Replay how fast/);
    await screen.key('4');
    await screen.see(/REPLAY ×100 SIMULATED/);
    await screen.see(/end of the run/, 20_000);
    expect(screen.screen).toMatch(/soak time 5\d\.\d\d s/);
    await screen.key('c');
    await screen.see(/This is a replay/);
    await keys(screen, 'q');
    await screen.see(/Leave/);
    await screen.key('y');
    await screen.see(/Trial of WB-212 on North/);
    screen.pty.write('\u0003');
    expect(await screen.ended()).toBe(0);
    expect(json(store, 'recordings').recordings).toEqual(before);
  }, 40_000);

  it('follows resizes to 120 × 36, says when the window is too small, and never fills it', async () => {
    const screen = start(demoStore());
    await screen.see(/Recent trials/);
    screen.pty.resize(120, 36);
    await screen.see(/2 runs SIMULATED/);
    screen.pty.resize(70, 20);
    await screen.see(/needs 80 × 24/);
    screen.pty.resize(80, 24);
    await screen.see(/Recent trials/);
    expect(screen.rows.filter((row) => row.trim() !== '').length).toBeLessThanOrEqual(23);
  });

  it('NO_COLOR: no colour is sent; --ascii: nothing but ASCII', async () => {
    const screen = start(demoStore(), ['--ascii'], { cols: 80, rows: 24 }, { NO_COLOR: '1' });
    await screen.see(/Recent trials/);
    expect(screen.screen).toMatch(/^[ -~\n]*$/);
    expect(screen.output).not.toMatch(/\u001b\[(?:\d+;)*3\d(?:;\d+)*m/);
  });
});

describe('going on from the command line', () => {
  it('refuses to bring measured and simulated runs into one trial, or another press', () => {
    const store = join(temporaryFolder(), 'store.db');
    runProgram(['demo', '--store', store, '--runs', '1']);
    const [{ trialId }] = json(store, 'trials').trials;
    const other = ['trial', '--go-on', trialId, '--store', store, '--plain'];
    const real = runProgram([...other, '--port', '/dev/no-such-port']);
    expect(real.code).toBe(2);
    expect(real.err).toMatch(/is simulated/);
    const south = runProgram([...other, '--simulated', '--press', 'South']);
    expect(south.code).toBe(2);
    expect(south.err).toMatch(/"South".*"North"/);
  });

  it('without a terminal the home is a few plain lines', () => {
    const { code, out } = runProgram([]);
    expect(code).toBe(0);
    expect(out).toMatch(/dwellwright demo/);
    expect(out).not.toContain('\u001b');
  });
});
