import { describe, expect, it } from 'vitest';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { ScriptedTrial, scripted } from './scripted-trial.ts';

const view = (trial: ScriptedTrial) => trialView(trial.state, { columns: 80, rows: 24, ascii: false });
const replayed = () => new ScriptedTrial({ replay: true, speed: 20 }).readings(0, 5);

describe('a stored run on the trial screen', () => {
  it('is marked as a replay, and as simulated where it was', () => {
    expect(view(replayed()).badge).toBe('REPLAY ×20 SIMULATED');
    expect(view(new ScriptedTrial({ simulated: false, replay: true, speed: 1 }).readings(0, 5)).badge).toBe(
      'REPLAY ×1',
    );
    expect(view(new ScriptedTrial({ simulated: false }).readings(0, 5)).badge).toBe('');
  });

  it('names halt, faster, slower, unit, help and quit, and takes no mark and no decision', () => {
    expect(view(replayed()).keys.map(({ key }) => key)).toEqual(['P', '+', '-', 'F', 'H', 'Q']);
    for (const key of ['c', 'o', 'x', 'n', 'u', 'r', 'a', 'k', ' ']) {
      const trial = replayed().key(key, 6);
      expect(trial.state.dialog).toBeNull();
      expect(trial.state.marksTaken).toEqual([]);
      expect(trial.intents).toEqual([]);
    }
  });

  it('at its end the last reading is not called old', () => {
    const later = (trial: ScriptedTrial) => trial.send({ kind: 'tick', atUs: 90e6 });
    expect(view(later(replayed())).state.name).toBe('stale');
    const over = replayed();
    over.send({ kind: 'replay-over', atUs: 5.1e6 });
    expect(view(later(over)).state.name).not.toBe('stale');
  });

  it('P halts it and lets it go on; the badge says so', () => {
    const halted = replayed().key('p', 6);
    expect(halted.intents).toEqual([{ kind: 'replay-pace', speed: 20, paused: true }]);
    expect(view(halted).badge).toBe('REPLAY HALTED ×20 SIMULATED');
    halted.key('p', 7);
    expect(halted.intents.at(-1)).toEqual({ kind: 'replay-pace', speed: 20, paused: false });
  });

  it('+ and - step through ×1, 2, 5, 10, 20, 50, 100 and stop at both ends', () => {
    const up = replayed();
    for (let i = 0; i < 4; i++) up.key('+', 6 + i);
    expect(up.intents.map((one) => one.kind === 'replay-pace' && one.speed)).toEqual([50, 100, 100, 100]);
    const down = replayed();
    for (let i = 0; i < 6; i++) down.key('-', 6 + i);
    expect(down.intents.map((one) => one.kind === 'replay-pace' && one.speed)).toEqual([10, 5, 2, 1, 1, 1]);
    expect(view(down).keys.map(({ key }) => key)).toEqual(['P', '+', 'F', 'H', 'Q']);
  });

  it('keys are told apart by the hand’s clock: three at once at ×100 are none, one alone in a halted replay counts', () => {
    const trial = new ScriptedTrial({ replay: true, speed: 100 }).readings(0, 5);
    const press = (character: string, atUs: number, handUs: number) =>
      trial.send({ kind: 'input', input: { kind: 'character', character, atUs, handUs }, atUs });
    // 1 ms of the hand between them, 100 ms of the replay.
    for (const [i, character] of [...'pfp'].entries()) press(character, 6e6 + i * 1e5, i * 1e3);
    trial.send({ kind: 'tick', atUs: 12e6, handUs: 60e3 });
    expect(trial.intents).toEqual([]);
    press('p', 13e6, 100e3);
    // The replay's clock stands, the hand's goes on.
    trial.send({ kind: 'tick', atUs: 13e6, handUs: 160e3 });
    expect(trial.intents).toEqual([{ kind: 'replay-pace', speed: 100, paused: true }]);
  });

  it('at ×100 readings of the stream’s last 5 s are not old, 1 s of the person without any is', () => {
    const trial = new ScriptedTrial({ replay: true, speed: 100 }).readings(0, 5);
    expect(view(trial.tick(10)).state.name).not.toBe('stale');
    expect(view(trial.tick(5 + 99)).state.name).not.toBe('stale');
    expect(view(trial.tick(5 + 101)).state.name).toBe('stale');
  });

  it('at its end the chart still shows the run with its closing and its crossing', () => {
    const trial = scripted('run good');
    const replay = { ...trial.state, setup: { ...trial.state.setup, replay: true } };
    const shown = (state: typeof replay) => {
      const { chart } = trialView(state, { columns: 80, rows: 24, ascii: false });
      return (chart?.marks ?? [])
        .filter(({ timeS }) => timeS >= (chart?.fromS ?? 0) && timeS <= (chart?.toS ?? 0))
        .map(({ label }) => label);
    };
    expect(shown(replay)).toEqual(expect.arrayContaining(['closed', 'crossing', 'opened']));
  });
});
