import { describe, expect, it } from 'vitest';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { ScriptedTrial } from './scripted-trial.ts';

const view = (trial: ScriptedTrial) => trialView(trial.state, { columns: 80, rows: 24, ascii: false });
const replayed = () => new ScriptedTrial({ replay: 'REPLAY ×20' }).readings(0, 5);

describe('a stored run on the trial screen', () => {
  it('is marked as a replay, and as simulated where it was', () => {
    expect(view(replayed()).badge).toBe('REPLAY ×20 SIMULATED');
    expect(view(new ScriptedTrial({ simulated: false, replay: 'REPLAY ×1' }).readings(0, 5)).badge).toBe(
      'REPLAY ×1',
    );
    expect(view(new ScriptedTrial({ simulated: false }).readings(0, 5)).badge).toBe('');
  });

  it('names only unit, help and quit, and takes no mark and no decision', () => {
    expect(view(replayed()).keys.map(({ key }) => key)).toEqual(['F', 'H', 'Q']);
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
});
