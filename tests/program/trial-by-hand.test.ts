import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { enterAfterALook } from './keyboard.ts';
import { PROGRAM, runProgram, temporaryFolder } from './run-program.ts';

/**
 * A person at the simulated press, keys sent and screens read on a real pseudo-terminal. Fifteen times as fast, a hold of
 * 20 s: the bond line takes about 53.5 s of the simulation, its truth.
 */
let screen: TerminalProgram;
afterEach(() => screen.kill());

const start = (store: string, size = { cols: 80, rows: 24 }, env: Record<string, string> = {}) => {
  screen = new TerminalProgram(
    PROGRAM,
    ['trial', '--simulated', '--speed', '15', '--hold', '20s', '--initials', 'MK', '--store', store],
    size,
    env,
  );
  return screen;
};

async function goThroughReadyCheck(): Promise<void> {
  // The platens recover from the part before.
  await screen.until(
    'nothing but what a person must look at',
    (p) => /LOOK +Ram gauge +94 psi/.test(p.screen) && !/ (NO|wait) +[A-Z]/.test(p.screen),
    20_000,
  );
  await enterAfterALook(screen);
  await screen.see(/ok +Ram gauge/);
  await enterAfterALook(screen);
  await screen.see(/ok +Probe tip/);
  if (!/ok +Bell/.test(screen.screen)) await enterAfterALook(screen);
  await screen.see(/All in order/);
  await enterAfterALook(screen);
}

async function makeRun(number: number): Promise<void> {
  await screen.see(/Key C at the moment|starts the run/);
  await screen.key('c');
  await screen.see(/closed \d+ s ago/);
  await screen.see(/target in about \d+ s/);
  await screen.see(/soak time 5\d\.\d s/, 20_000);
  await screen.see(/has had its hold|missing during the hold/, 20_000);
  await screen.key('o');
  await screen.see(new RegExp(`run ${number}: soak time 5\\d\\.\\d\\d s`), 20_000);
}

describe('a trial by hand on the simulated press', () => {
  it('from the ready check through two runs to an accepted recipe with a note', async () => {
    const store = join(temporaryFolder(), 'store.db');
    start(store);
    await screen.see(/no safety device/);
    await screen.key('\r');
    await goThroughReadyCheck();
    await makeRun(1);
    await screen.see(/cool|Carrier warm|Key K/);
    // The part is changed 20 s after opening: then the carrier is cool.
    await screen.until('a cool carrier', (p) => /bond line 7\d\.\d °F/.test(p.screen), 20_000);
    await screen.key('k');
    await goThroughReadyCheck();
    await makeRun(2);
    await screen.key('d');
    await screen.see(/soak 5\d\.\d s \+ hold 20 s \+ margin 0 s/);
    await screen.key('e');
    await screen.see(/Where the doubt comes from/);
    await screen.key('v');
    await screen.see(/unusable ones and those set aside/);
    await screen.key('a');
    await screen.see(/Which dwell\?/);
    await screen.key('\r');
    await screen.see(/Your initials +MK_/);
    await screen.key('\r');
    await screen.see(/Note to the recipe/);
    for (const letter of 'Monday') await screen.key(letter);
    await screen.key('\r');
    await screen.see(/Recipe accepted: WB-212 on North, version 1/);
    await screen.key('q');
    await screen.key('y');
    expect(await screen.ended()).toBe(0);
    expect(screen.terminalRestored).toBe(true);

    const { recipes } = JSON.parse(runProgram(['recipes', '--store', store, '--json']).out);
    expect(recipes).toHaveLength(1);
    expect(recipes[0]).toMatchObject({ initials: 'MK', note: 'Monday', simulated: true });
    // Closed form: 225 psi · (212² − 168²) / 200².
    expect(recipes[0].gaugePsi).toBeCloseTo(94.05, 2);
    const [trial] = JSON.parse(runProgram(['trials', '--store', store, '--json']).out).trials;
    const { runs } = JSON.parse(
      runProgram(['replay', '--trial', trial.trialId, '--store', store, '--json']).out,
    );
    expect(runs).toHaveLength(2);
    for (const run of runs) {
      expect(run.soakTimeS).toBeGreaterThan(51);
      expect(run.soakTimeS).toBeLessThan(56);
      expect(run.notes).toContain('Ready check: ram gauge 94 psi (648 kPa) confirmed.');
    }
  }, 90_000);

  it('C in the middle of the ready check starts the run; X after the run takes it out, U gives it back', async () => {
    const store = join(temporaryFolder(), 'store.db');
    start(store, { cols: 120, rows: 36 }, { NO_COLOR: '1' });
    await screen.see(/no safety device/);
    await screen.key('\r');
    await screen.see(/LOOK +Ram gauge/, 20_000);
    await screen.key('c');
    await screen.see(/soak time 5\d\.\d s/, 20_000);
    await screen.key('o');
    await screen.see(/run 1: soak time/, 20_000);
    await screen.key('x');
    await screen.see(/Spoilt run. Why\?/);
    await screen.key('z');
    await screen.key('\r');
    await screen.see(/unusable +Marked as spoilt: z/);
    await screen.key('u');
    await screen.until('the run as it was', (p) => !/Marked as spoilt/.test(p.screen));
    // Without colour only weight, underline and reverse are used.
    expect(screen.output).not.toMatch(/\u001b\[(?:\d;)?3[0-9]m/);
    screen.pty.write('\u0003');
    // 1: the run was opened early, so none counts and there is no dwell.
    expect(await screen.ended()).toBe(1);
    expect(screen.terminalRestored).toBe(true);
  }, 60_000);
});
