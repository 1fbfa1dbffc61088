import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { TerminalProgram } from '../adapters/terminal/terminal-program.ts';
import { answer, enterAfterALook, press } from './keyboard.ts';
import { PROGRAM, runProgram, temporaryFolder } from './run-program.ts';

let program: TerminalProgram | null = null;
afterEach(() => program?.kill());

const json = (store: string, ...args: readonly string[]) =>
  JSON.parse(runProgram([...args, '--store', store, '--json']).out);

/** Ready check from its first open line: the gauge is gone on without, for a reason; the rest is confirmed. */
async function readyCheck(screen: TerminalProgram): Promise<void> {
  await screen.until(
    'nothing but what a person must look at',
    (p) => /LOOK +Ram gauge/.test(p.screen) && !/ (NO|wait) +[A-Z]/.test(p.screen),
    25_000,
  );
  await screen.key('w');
  await answer(screen, /Why/, 'gauge out for repair');
  await screen.see(/went on|gone on|ANYWAY|anyway/);
  await enterAfterALook(screen);
  await screen.see(/ok +Probe tip/);
  if (!/ok +Bell/.test(screen.screen)) await enterAfterALook(screen);
  await screen.see(/All in order/);
  await enterAfterALook(screen);
}

async function untilHoldDone(screen: TerminalProgram): Promise<void> {
  await press(screen, /Key C at the moment|starts the run/, 'c');
  // Simulator's truth: about 53.5 s of soak.
  await screen.see(/soak time 5\d\.\d s/, 25_000);
  await screen.see(/has had its hold|missing during the hold/, 25_000);
}

const cool = (screen: TerminalProgram): Promise<void> =>
  screen.until('a cool carrier', (p) => /bond line [67]\d\.\d °F/.test(p.screen), 25_000);

describe('from the first start to an accepted recipe, on one pseudo-terminal', () => {
  it('press, assembly, reader and channels; ready check with a reason; three runs, one spoilt, one taken back; result; recipe', async () => {
    const store = join(temporaryFolder(), 'store.db');
    const screen = new TerminalProgram(PROGRAM, ['--speed', '20'], undefined, { DWELLWRIGHT_STORE: store });
    program = screen;
    await press(screen, /First use: name the press/, '\r');
    await answer(screen, /What is the press called/, 'North');
    await answer(screen, /Bore of the ram/, '200 mm');
    await press(screen, /How many rams/, '1');
    await press(screen, /Enter takes 450F/, '\r');
    await answer(screen, /One division of the gauge/, '2psi');
    await answer(screen, /What is the assembly called/, 'WB-212');
    await answer(screen, /Outer diameter/, '212mm');
    await answer(screen, /Inner diameter/, '168mm');
    await answer(screen, /What is the carrier/, 'brake plate');
    await press(screen, /Enter takes 350F/, '\r');
    await answer(screen, /Enter takes 120 s/, '20s');
    await press(screen, /Enter takes 200 to 250 psi/, '\r');
    await press(screen, /Where is the reader/, 'p');
    await answer(screen, /Path of the port/, '/dev/ttyACM9');
    await press(screen, /Which unit does the reader send/, '1');
    await press(screen, /What is each channel laid on/, '4');
    await screen.see(/1 bond line, 2 bond line, outer edge, 3 upper platen/);
    // No such reader here: the simulated one instead, and initials.
    await screen.key('3');
    await press(screen, /Where is the reader/, 's');
    await press(screen, /Reader +simulated reader/, '8');
    await answer(screen, /Your initials/, 'MK');
    await press(screen, /Initials +MK/, '\r');

    await press(screen, /no safety device/, '\r');
    await readyCheck(screen);
    await untilHoldDone(screen);
    // Opened, taken back, opened again: one run.
    await screen.key('o');
    await press(screen, /Marked: opened|Working out/, 'u');
    await screen.see(/Taken back: opened/);
    await screen.key('o');
    await screen.see(/run 1: soak time 5\d\.\d\d s/, 25_000);
    await cool(screen);

    await screen.key('k');
    await readyCheck(screen);
    await untilHoldDone(screen);
    await screen.key('o');
    await screen.see(/run 2: soak time 5\d\.\d\d s/, 25_000);
    // Marked as spoilt by mistake, and taken back.
    await screen.key('x');
    await answer(screen, /Spoilt run\. Why/, 'wrong run');
    await press(screen, /Marked as spoilt: wrong run/, 'u');
    await screen.until('run 2 as it was', (p) => !/Marked as spoilt/.test(p.screen));
    await cool(screen);

    await screen.key('k');
    await readyCheck(screen);
    await press(screen, /Key C at the moment|starts the run/, 'c');
    await press(screen, /closed \d+ s ago/, 'n');
    await answer(screen, /Note/, 'tape came off');
    await screen.key('x');
    await answer(screen, /Spoilt run\. Why/, 'probe slipped');
    await screen.see(/Marked: spoilt run/);
    await screen.key('o');
    await screen.see(/Marked as spoilt: probe slipped/, 25_000);

    await screen.key('d');
    await screen.see(/soak 5\d\.\d s \+ hold 20 s \+ margin 0 s/);
    await press(screen, /DWELL|2 runs/, 'a');
    await press(screen, /Which dwell/, '\r');
    await press(screen, /Your initials +MK_/, '\r');
    await answer(screen, /Note to the recipe/, 'first article');
    await screen.see(/Recipe accepted: WB-212 on North, version 1/);
    await screen.key('q');
    await press(screen, /Leave the trial/, 'y');
    await screen.see(/Recent trials/);
    await screen.key('q');
    await press(screen, /Leave Dwellwright/, 'y');
    expect(await screen.ended()).toBe(0);
    expect(screen.terminalRestored).toBe(true);

    const list = runProgram(['recipes', '--store', store]).out;
    expect(list).toMatch(/WB-212 on North.*version 1/s);
    const { recipes } = json(store, 'recipes');
    expect(recipes).toHaveLength(1);
    expect(recipes[0]).toMatchObject({
      assemblyName: 'WB-212',
      pressName: 'North',
      initials: 'MK',
      note: 'first article',
      simulated: true,
    });
    // The gauge was not confirmed, so it is worked out: 225 psi · (212² − 168²) / 200², closed form.
    expect(recipes[0].gaugePsi).toBeCloseTo(94.05, 2);
    expect(runProgram(['recipes', '--store', store]).out).toMatch(/worked out/);
    expect(recipes[0].restsOn).toHaveLength(2);
    // 20 s of hold after a soak of about 53.5 s, by the stricter rule.
    expect(recipes[0].dwellS).toBeGreaterThanOrEqual(73);
    expect(recipes[0].dwellS).toBeLessThan(90);
    const [trial] = json(store, 'trials').trials;
    expect(trial).toMatchObject({ assemblyName: 'WB-212', pressName: 'North', simulated: true });
    const { runs } = json(store, 'replay', '--trial', trial.trialId);
    expect(runs).toHaveLength(3);
    expect(runs.map((run: { verdict: string }) => run.verdict)).toEqual(['good', 'good', 'unusable']);
    expect(runs[0].notes.join(' ')).toMatch(/gauge out for repair/);
    expect(runs[2].notes).toContain('tape came off');
    expect(runs[2].soakTimeS).toBeNull();
  }, 180_000);
});
