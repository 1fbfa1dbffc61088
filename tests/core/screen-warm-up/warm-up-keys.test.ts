import { describe, expect, it } from 'vitest';
import { warmUpReducer } from '../../../src/core/screen-warm-up/warm-up-reducer.ts';
import { warmUpStanding } from '../../../src/core/screen-warm-up/warm-up-standing.ts';
import { WARM_UP_LIVE_TEXT } from '../../../src/core/text/warm-up-live-text.ts';
import { HEATERS_ON, HEATERS_ON_TAKEN_BACK } from '../../../src/core/warm-up/heaters-notes.ts';
import {
  later,
  pressed,
  rising,
  SET_C,
  steady,
  stepped,
  WARM_UP_STATES,
  watched,
} from './watched-platens.ts';

describe('heaters on', () => {
  const cold = WARM_UP_STATES.cold();

  it('P marks power-on at the moment of the key, on the recording’s clock', () => {
    const { state, intents } = pressed(cold, 'p', 0.2);
    expect(intents).toEqual([{ kind: 'heaters-on', atUs: cold.nowUs + 200_000 }]);
    // The latest of 40 readings a second apart came at 39 s.
    expect(state.heaters?.onS).toBeCloseTo(39.2, 6);
  });

  it('the same key within 1 s counts once', () => {
    const once = pressed(cold, 'p', 0.2).state;
    expect(pressed(once, 'p', 0.5).intents).toEqual([]);
    expect(pressed(once, 'p', 0.5).state.asking).toBeNull();
  });

  it('later it asks first: Esc keeps the mark, Y marks anew', () => {
    const once = pressed(cold, 'p', 0.2).state;
    const asked = pressed(once, 'p', 3);
    expect(asked.intents).toEqual([]);
    expect(asked.state.asking).toBe('heaters');
    expect(pressed(asked.state, 'Esc').state.heaters).toEqual(once.heaters);
    const anew = pressed(asked.state, 'y');
    expect(anew.intents).toHaveLength(1);
    expect(anew.state.heaters!.onS).toBeGreaterThan(once.heaters!.onS + 3);
  });

  it('U takes it back; without a mark U does nothing', () => {
    const undone = pressed(pressed(cold, 'p').state, 'u', 2);
    expect(undone.state.heaters).toBeNull();
    expect(undone.intents).toMatchObject([{ kind: 'undo-heaters-on' }]);
    expect(pressed(cold, 'u').intents).toEqual([]);
  });

  it('what is kept in the recording is what the analysis looks for', () => {
    expect(WARM_UP_LIVE_TEXT.notes.heatersOn).toMatch(HEATERS_ON);
    expect(WARM_UP_LIVE_TEXT.notes.takenBack).toMatch(HEATERS_ON_TAKEN_BACK);
    expect(WARM_UP_LIVE_TEXT.notes.takenBack).not.toMatch(HEATERS_ON);
  });
});

describe('leaving, help, cautions', () => {
  const heating = WARM_UP_STATES.heating();

  it('Q asks; Y leaves, Esc stays', () => {
    const asked = pressed(heating, 'q');
    expect(asked.intents).toEqual([]);
    expect(pressed(asked.state, 'y').intents).toEqual([{ kind: 'quit' }]);
    expect(pressed(asked.state, 'Esc').state.asking).toBeNull();
  });

  it('H opens help and closes it; readings go on behind it', () => {
    const help = pressed(heating, 'h').state;
    expect(help.help).toBe(true);
    expect(pressed(help, 'p').intents).toEqual([]);
    expect(pressed(help, 'h').state.help).toBe(false);
    expect(pressed(help, 'Esc').state.help).toBe(false);
  });

  it('the cautions are acknowledged by Enter, once; before that nothing is marked', () => {
    const unread = WARM_UP_STATES['cautions to read']();
    expect(pressed(unread, 'p').intents).toEqual([]);
    const read = pressed(unread, 'Enter');
    expect(read.intents).toEqual([{ kind: 'cautions-acknowledged' }]);
    expect(pressed(read.state, 'Enter').intents).toEqual([]);
  });

  it('several keys at once and a scan do nothing, and it is said', () => {
    const atUs = heating.nowUs + 1e6;
    const typed = (text: string) =>
      [...text].reduce(
        (state, character, i) =>
          stepped(state, {
            kind: 'input',
            input: { kind: 'character', character, atUs: atUs + i * 5000 },
            atUs: atUs + i * 5000,
          }),
        heating,
      );
    expect(stepped(typed('pq'), { kind: 'tick', atUs: atUs + 2e5 }).notice?.text).toContain('none counted');
    const [scanned, intents] = warmUpReducer(typed('qpy12'), {
      kind: 'input',
      input: { kind: 'named', name: 'enter', atUs: atUs + 30_000 },
      atUs: atUs + 30_000,
    });
    expect(intents).toEqual([]);
    expect(scanned.notice?.text).toContain('scan');
  });
});

describe('bell', () => {
  it('rings once at READY, not again after a platen left the band and came back', () => {
    let state = watched(steady(300, SET_C));
    let rings = 0;
    const again = watched([...steady(302, SET_C), ...steady(20, SET_C - 8), ...steady(320, SET_C)]);
    expect(again.rung).toBe(true);
    const values = [SET_C, SET_C].map((temperatureC) => ({ kind: 'temperature' as const, temperatureC }));
    for (const ready of [true, false, true]) {
      const [next, intents] = warmUpReducer(state, {
        kind: 'reading',
        ready: { ...state.ready, ready },
        values,
        atUs: state.nowUs + 1e6,
      });
      state = next;
      rings += intents.filter(({ kind }) => kind === 'bell').length;
    }
    expect(rings).toBe(1);
  });
});

describe('standing', () => {
  it('a second heating after cooling is HEATING again, not BELOW BAND', () => {
    const state = watched([
      ...steady(302, SET_C),
      ...rising(400, SET_C, -0.5),
      ...rising(120, SET_C - 200, 0.3),
    ]);
    expect(state.wasInside).toBe(false);
  });

  it('a reader of one reading in 5 s is not called stale between two of them', () => {
    const slow = { ...WARM_UP_STATES.heating(), intervalS: 5 };
    expect(warmUpStanding(later(slow, 4))).toBe('heating');
    expect(warmUpStanding(later(slow, 6))).toBe('stale');
  });
});
