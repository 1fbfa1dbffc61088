import { describe, expect, it } from 'vitest';
import { blockText } from '../../../src/core/chart/block-text.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { EMPTY_INPUT } from '../../../src/core/screen/ScreenInput.ts';
import { shellFrame } from '../../../src/core/screen-shell/shell-frame.ts';
import type { WarmUpScreenState } from '../../../src/core/screen-warm-up/WarmUpScreen.ts';
import { warmUpReducer } from '../../../src/core/screen-warm-up/warm-up-reducer.ts';
import { warmUpStanding } from '../../../src/core/screen-warm-up/warm-up-standing.ts';
import { warmUpView } from '../../../src/core/screen-warm-up/warm-up-view.ts';
import { createReadyWatch } from '../../../src/core/warm-up/create-ready-watch.ts';

// 450 °F and ±5 °F in °C by the definition of the scales (exact).
const SET_C = (450 - 32) / 1.8;
const RULE = { bandC: 5 / 1.8, forS: 300 };
const PLATENS = ['upper platen', 'lower platen'].map((label) => ({ label, setPointC: SET_C }));

/** Readings of both platens once a second, the last of them just now. */
function readingsOf(temperaturesC: readonly (number | null)[]): WarmUpScreenState {
  const watch = createReadyWatch({ rule: RULE, platens: PLATENS });
  let state: WarmUpScreenState = {
    pressName: 'North',
    readerName: 'port A',
    simulated: false,
    speed: 1,
    rule: RULE,
    unit: 'F',
    storePath: '/shop/store.db',
    ready: watch.state,
    latestUs: null,
    nowUs: 0,
    link: { kind: 'open' },
    store: null,
    rung: false,
    input: EMPTY_INPUT,
  };
  for (const [second, temperatureC] of temperaturesC.entries()) {
    const ready = watch.accept(second, [temperatureC, temperatureC]);
    [state] = warmUpReducer(state, { kind: 'reading', ready, atUs: second * 1e6 });
  }
  return state;
}

const seconds = (count: number, temperatureC: number) => Array.from({ length: count }, () => temperatureC);
const HEATING = readingsOf(Array.from({ length: 600 }, (_, second) => 20 + second * 0.3));
const IN_BAND = readingsOf(seconds(61, SET_C));
const READY = readingsOf(seconds(302, SET_C));
const STALE: WarmUpScreenState = warmUpReducer(READY, { kind: 'tick', atUs: READY.nowUs + 6e6 })[0];
const LOST: WarmUpScreenState = warmUpReducer(READY, {
  kind: 'link',
  link: { kind: 'lost', sinceUs: READY.nowUs, cause: 'unplugged' },
  atUs: READY.nowUs,
})[0];

const frame = (state: WarmUpScreenState, columns: number, rows: number, ascii = false) =>
  shellFrame(warmUpView(state), { columns, rows, ascii }).map(rowText);

describe.each([
  ['no readings yet', readingsOf([]), 'no-reading', 'NO READING', 'Waiting for a reading'],
  ['heating', HEATING, 'heating', 'HEATING', 'Not READY: upper platen'],
  [
    '20 °C above set point',
    readingsOf(seconds(20, SET_C + 20)),
    'above',
    'ABOVE BAND',
    'Not READY: upper platen 36',
  ],
  ['in band for 1 min', IN_BAND, 'in-band', 'IN BAND', 'Inside the band for 1:0'],
  ['ready', READY, 'ready', 'READY', 'READY: every platen inside its band for'],
  ['readings stopped 6 s ago', STALE, 'stale', 'OLD READING', 'The latest reading is 6 s old'],
  ['reader lost', LOST, 'no-reader', 'NO READER', 'READER LOST'],
] as const)('%s', (_title, state, standing, word, sentence) => {
  it(`stands as ${standing}`, () => expect(warmUpStanding(state)).toBe(standing));

  it.each([
    [80, 24, 'small', false],
    [80, 24, 'small', true],
    [120, 36, 'large', false],
    [120, 36, 'large', true],
  ] as const)(
    'shows word, sentence, caution and key on %d×%d (%s letters, ASCII %s)',
    (columns, rows, size, ascii) => {
      const shown = frame(state, columns, rows, ascii);
      const text = shown.join('\n');
      // The last line of the window stays free.
      expect(shown).toHaveLength(rows - 1);
      expect(Math.max(...shown.map((row) => row.length))).toBeLessThanOrEqual(columns);
      for (const row of blockText(word, { size, ascii })) expect(text).toContain(row.trimEnd());
      expect(text).toContain(sentence);
      expect(text).toContain('Platens burn at once');
      expect(text).toMatch(/Q\b.*leave/u);
      if (ascii) expect(text).not.toMatch(/[█▀▄■]/u);
    },
  );
});

describe('figures and bell', () => {
  it('shows 450 °F in block digits at set point, and 232 after F', () => {
    const digits = (words: string) => blockText(words, { size: 'large', ascii: false })[0]!.trimEnd();
    expect(frame(READY, 120, 36).join('\n')).toContain(digits('450 F'));
    const [typed] = warmUpReducer(READY, {
      kind: 'input',
      input: { kind: 'character', character: 'f', atUs: READY.nowUs },
      atUs: READY.nowUs,
    });
    const [celsius, intents] = warmUpReducer(typed, { kind: 'tick', atUs: READY.nowUs + 2e5 });
    expect(intents).toEqual([{ kind: 'unit', unit: 'C' }]);
    expect(frame(celsius, 120, 36).join('\n')).toContain(digits('232 C'));
  });

  it('rings once at READY, not again after a platen left the band and came back', () => {
    const before = { ...READY, rung: false };
    const ring = { kind: 'reading', ready: READY.ready, atUs: READY.nowUs } as const;
    const [rung, bell] = warmUpReducer(before, ring);
    expect(bell).toEqual([{ kind: 'bell' }]);
    const [out] = warmUpReducer(rung, { ...ring, ready: HEATING.ready });
    expect(warmUpReducer(out, ring)[1]).toEqual([]);
  });

  it('leaves on Q', () => {
    const input = { kind: 'character', character: 'q', atUs: READY.nowUs } as const;
    const [typed] = warmUpReducer(READY, { kind: 'input', input, atUs: READY.nowUs });
    expect(warmUpReducer(typed, { kind: 'tick', atUs: READY.nowUs + 2e5 })[1]).toEqual([{ kind: 'quit' }]);
  });

  it('expects READY in 6 to 10 min while heating at a steady 0.3 °C/s', () => {
    // Closed form at a rise that never slows: (229.4 − 199.7) °C / 0.3 °C/s = 99 s to the band and 300 s in it, 6.7 min;
    // a controller that throttles can only be later.
    const told = /READY in about (\d+) min/u.exec(frame(HEATING, 80, 24).join(' '));
    expect(Number(told?.[1])).toBeGreaterThanOrEqual(6);
    expect(Number(told?.[1])).toBeLessThanOrEqual(10);
  });
});
