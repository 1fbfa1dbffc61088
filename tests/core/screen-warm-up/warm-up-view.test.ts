import { describe, expect, it } from 'vitest';
import { styledRowToAnsi } from '../../../src/adapters/terminal/styled-row-to-ansi.ts';
import { blockText, blockTextColumns } from '../../../src/core/chart/block-text.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { asciiText } from '../../../src/core/screen/ascii-text.ts';
import { shellFrame } from '../../../src/core/screen-shell/shell-frame.ts';
import type { WarmUpScreenState } from '../../../src/core/screen-warm-up/WarmUpScreen.ts';
import { warmUpStanding } from '../../../src/core/screen-warm-up/warm-up-standing.ts';
import { warmUpView } from '../../../src/core/screen-warm-up/warm-up-view.ts';
import { WARM_UP_LIVE_TEXT } from '../../../src/core/text/warm-up-live-text.ts';
import { later, pressed, SET_C, steady, stepped, WARM_UP_STATES, watched } from './watched-platens.ts';

const rowsOf = (state: WarmUpScreenState, columns: number, rows: number, ascii = false) =>
  shellFrame(warmUpView(state), { columns, rows, ascii });
const frame = (state: WarmUpScreenState, columns: number, rows: number, ascii = false) =>
  rowsOf(state, columns, rows, ascii).map(rowText);

/** State, its word in block letters, a sentence that must be there. */
const EXPECTED = {
  'no reading yet': ['no-reading', 'WAITING', 'Waiting for the first reading from /dev/ttyACM0'],
  'silent reader': ['no-reading', 'WAITING', 'Nothing has come from /dev/ttyACM0 for 12 s'],
  cold: ['cold', 'COLD', 'Press P when the heaters go on'],
  'cold, heaters on': ['cold', 'COLD', 'heaters on for 0:01 min'],
  'heaters on for long, nothing rises': ['cold', 'COLD', 'Are the heaters on'],
  heating: ['heating', 'HEATING', 'READY in about'],
  near: ['near', 'NEAR', 'READY in about'],
  'above band': ['above', 'ABOVE BAND', 'Above the band'],
  'in band': ['in-band', 'IN BAND', 'min to READY, all inside'],
  ready: ['ready', 'READY', 'READY: every platen inside 450'],
  'fell out of band': ['below', 'BELOW BAND', 'Fell out of the band'],
  cooling: ['cooling', 'COOLING', 'The platens cool'],
  'probe fault': ['fault', 'FAULT', 'open circuit'],
  'no reading of one': ['no-reading', 'WAITING', 'channel 2 gives no reading'],
  stale: ['stale', 'OLD READING', 'No reading for 6 s'],
  'reader lost': ['no-reader', 'NO READER', 'READER LOST'],
  'leaving asked': ['heating', 'HEATING', 'Leave the warm-up?'],
  'heaters on again asked': ['cold', 'COLD', 'Heaters on again?'],
} as const;

const WINDOWS = [
  [80, 24, false],
  [80, 24, true],
  [120, 36, false],
  [120, 36, true],
] as const;

describe.each(Object.entries(EXPECTED))('%s', (name, [standing, word, sentence]) => {
  const state = WARM_UP_STATES[name as keyof typeof EXPECTED]();

  it(`stands as ${standing}`, () => expect(warmUpStanding(state)).toBe(standing));

  it.each(WINDOWS)(
    'shows word, sentence, rule and the way out on %d×%d (ASCII %s)',
    (columns, rows, ascii) => {
      const shown = frame(state, columns, rows, ascii);
      const text = shown.join('\n');
      // Large where it fits beside the figure: 120 columns less 55.
      const size = columns === 120 && !ascii && blockTextColumns(word, 'large') <= 65 ? 'large' : 'small';
      for (const row of blockText(word, { size, ascii })) expect(text).toContain(row.trimEnd());
      expect(text.replace(/\s+/g, ' ')).toContain(sentence);
      expect(text.replace(/\s+/g, ' ')).toMatch(/READY: every platen inside 450 .* for 5:00 min\./u);
      expect(shown.at(-2)).toMatch(/Q\s+leave|Y\s+yes/u);
      // Main figure of five rows or more in the left half, dashes too; nothing below it is drawn over.
      expect(shown.slice(1, 6).every((row) => row.length === columns)).toBe(true);
      if (ascii) expect(text).toMatch(/^[ -~\n]*$/);
    },
  );
});

describe('chart', () => {
  it.each(WINDOWS)(
    'has both platens, the set point line and the shaded band on %d×%d (ASCII %s)',
    (columns, rows, ascii) => {
      const shown = frame(watched(steady(302, [SET_C - 1, SET_C + 1])), columns, rows, ascii);
      const text = shown.join('\n');
      expect(text).toContain(ascii ? '---' : '───');
      expect(text).toContain(' target ');
      const ends = shown.map((row) => row.at(-1)).join('');
      expect(ends).toContain('U');
      expect(ends).toContain('L');
      // ±5 °F about 450 °F in steps of 10 °F: the shade lies beside the line.
      if (rows === 36) expect(text).toContain(ascii ? '....' : '░░░░');
    },
  );

  it('is there in the small window while heating, at least six rows high', () => {
    const shown = frame(WARM_UP_STATES['heating, heaters marked'](), 80, 24);
    const from = shown.findIndex((row) => /^\s+°F/u.test(row));
    const to = shown.findIndex((row) => row.includes('└'));
    expect(to - from).toBeGreaterThanOrEqual(5);
    expect(shown[from]).toContain('heaters on');
  });
});

describe('what is old or wrong looks so, with and without colour', () => {
  const figureOf = (state: WarmUpScreenState) => rowsOf(state, 80, 24).slice(1, 6);
  const digits = (faded: boolean) => blockText('450', { size: 'large', ascii: false, faded })[0]!.trimEnd();

  it('READY: 450 °F in full block digits; 6 s without readings: the same in a broken, grey shade with its age', () => {
    const ready = figureOf(WARM_UP_STATES.ready());
    expect(ready.map(rowText).join('\n')).toContain(digits(false));
    const stale = WARM_UP_STATES.stale();
    expect(figureOf(stale).map(rowText).join('\n')).toContain(digits(true));
    expect(figureOf(stale).map(rowText).join('\n')).not.toContain(digits(false));
    expect(figureOf(stale)[0]?.[0]?.role).toBe('quiet');
    expect(frame(stale, 80, 24).join('\n')).toContain('as it was 6 s ago');
    // Without colour the shade alone tells.
    const left = figureOf(stale).map((row) => styledRowToAnsi(row.slice(0, 1), 'none'));
    expect(left.join('')).toContain('░');
    expect(left.join('')).not.toContain('█');
  });

  it('a faulted probe has no figure, and a word of its own beside the other platen’s value', () => {
    const state = WARM_UP_STATES['probe fault']();
    const text = frame(state, 120, 36).join('\n');
    expect(text).toContain(
      blockText('---', { size: 'big', ascii: false, faded: true })[4]!.trimEnd().trimStart(),
    );
    expect(text).toMatch(/U upper platen FAULT: open circuit/);
    expect(text).toMatch(/L lower platen 392\.0 °F = 200\.0 °C/);
  });

  it('a platen that faults is not READY, though it was a second ago', () => {
    const state = watched([...steady(302, SET_C), ['open-circuit', SET_C]]);
    expect(warmUpStanding(state)).toBe('fault');
    expect(frame(state, 80, 24).join('\n')).not.toContain(
      blockText('READY', { size: 'small', ascii: false })[0],
    );
  });

  it('a simulation says so on every page', () => {
    for (const key of ['', 'h', 'q']) {
      const state = WARM_UP_STATES['heating, simulated']();
      expect(frame(key === '' ? state : pressed(state, key).state, 80, 24)[0]).toContain('SIMULATED');
    }
  });
});

describe('figure', () => {
  it('counts down to READY inside the band: 61 s in, 4:00 min of 5:00 min are left', () => {
    const shown = frame(WARM_UP_STATES['in band'](), 80, 24).slice(1, 6).join('\n');
    for (const row of blockText('4:00', { size: 'large', ascii: false }))
      expect(shown).toContain(row.trimEnd());
  });

  it('is of the platen farther from its set point: the colder while heating, the hotter above', () => {
    expect(frame(watched(steady(20, [200, 190])), 80, 24).join('\n')).toContain(
      'colder: lower, 76.0 °F below',
    );
    expect(frame(watched(steady(20, [SET_C + 5, SET_C + 9])), 80, 24).join('\n')).toContain(
      'hotter: lower, 16.2 °F above',
    );
  });

  it('changes at most four times a second', () => {
    const state = watched(steady(20, 200));
    expect(state.shown).toBe(state.ready);
    const next = { ...state.ready, timeS: 20 };
    const values = [200, 200].map((temperatureC) => ({ kind: 'temperature' as const, temperatureC }));
    const soon = [50, 100, 240, 260].map((ms) => {
      const { shown } = reading(state, next, values, ms);
      return shown === next;
    });
    expect(soon).toEqual([false, false, false, true]);
  });

  it('expects READY in 6 to 10 min while heating at a steady 0.3 °C/s', () => {
    // Closed form at a rise that never slows: (229.4 − 199.7) °C / 0.3 °C/s = 99 s to the band and 300 s in it, 6.7 min;
    // a controller that throttles can only be later.
    const told = /READY in about (\d+) min/u.exec(frame(WARM_UP_STATES.heating(), 80, 24).join(' '));
    expect(Number(told?.[1])).toBeGreaterThanOrEqual(6);
    expect(Number(told?.[1])).toBeLessThanOrEqual(10);
  });
});

describe('help', () => {
  it.each(WINDOWS)('stands whole on %d×%d (ASCII %s), no line of it broken', (columns, rows, ascii) => {
    const shown = frame(WARM_UP_STATES.help(), columns, rows, ascii).map((row) => row.trim());
    for (const line of WARM_UP_LIVE_TEXT.help)
      expect(shown).toContain((ascii ? asciiText(line) : line).trim());
  });
});

describe('age and status', () => {
  it('names reader, rate, lost lines, free disk and store; the age once it is 2 s', () => {
    const status = frame(WARM_UP_STATES.ready(), 80, 24).at(-1);
    expect(status).toMatch(
      /\/dev\/ttyACM0 {2}1\.0 readings\/s {2}0 lost lines {2}82 GB free {2}store store\.db/,
    );
    expect(frame(later(WARM_UP_STATES.ready(), 3), 80, 24).at(-1)).toContain('reading 3 s old');
  });
});

function reading(
  state: WarmUpScreenState,
  ready: WarmUpScreenState['ready'],
  values: readonly { kind: 'temperature'; temperatureC: number }[],
  ms: number,
) {
  return stepped(state, { kind: 'reading', ready, values, atUs: state.nowUs + ms * 1000 });
}
