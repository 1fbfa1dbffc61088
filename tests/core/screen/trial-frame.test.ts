import { describe, expect, it } from 'vitest';
import { blockText } from '../../../src/core/chart/block-text.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { trialFrame } from '../../../src/core/screen/trial-frame.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { STATE_WORD } from '../../../src/core/text/screen-text.ts';
import { SCRIPTS, type ScriptedTrial, scripted, ScriptedTrial as Trial } from './scripted-trial.ts';

const frame = (trial: ScriptedTrial, columns = 80, rows = 24, ascii = false) =>
  trialFrame(trialView(trial.state, { columns, rows, ascii })).map(rowText);

const SIZES = [
  [80, 24],
  [100, 30],
  [120, 36],
] as const;

/** What each state must say in letters, whatever the colours. */
const SAYS: Readonly<Record<string, { readonly word: keyof typeof STATE_WORD; readonly text: RegExp }>> = {
  'no reader': { word: 'no-reader', text: /No reading yet/ },
  'reader lost': { word: 'no-reader', text: /Reader lost: unplugged/ },
  waiting: { word: 'waiting', text: /Key C at the moment/ },
  heating: { word: 'heating', text: /target in about \d+ s \(\d+ to \d+ s\)/ },
  stale: { word: 'stale', text: /12 s old/ },
  fault: { word: 'open', text: /open circuit/ },
  hold: { word: 'hold', text: /hold seen 34 s of 120 s/ },
  dipped: { word: 'dipped', text: /the hold starts again/ },
  'after a dip': { word: 'hold-not-verified', text: /A dip below target: the hold counts anew/ },
  'hold done after a dip': { word: 'hold-done-after-dip', text: /120 s unbroken after a dip/ },
  'hold not verified': { word: 'hold-not-verified', text: /6 s old/ },
  'hold done': { word: 'hold-done', text: /has had its hold/ },
  opened: { word: 'opened', text: /Working out/ },
  'run good': { word: 'good', text: /run 5: soak time 53\.60 s/ },
  'run suspect': { word: 'suspect', text: /[Cc]arrier/ },
};

describe('trialFrame', () => {
  it.each(Object.keys(SCRIPTS))(
    '%s: exactly one row less than the window, every row as wide as it, at three sizes, braille and ASCII',
    (name) => {
      for (const [columns, rows] of SIZES) {
        for (const ascii of [false, true]) {
          const drawn = frame(scripted(name), columns, rows, ascii);
          expect(drawn.length).toBe(rows - 1);
          expect(new Set(drawn.map((row) => row.length))).toEqual(new Set([columns]));
          if (ascii) expect(drawn.join('')).toMatch(/^[ -~]*$/);
        }
      }
    },
  );

  it.each(Object.entries(SAYS))(
    '%s: says so in block letters and in words at 80 × 24 and 120 × 36',
    (name, { word, text }) => {
      for (const [columns, rows] of [SIZES[0], SIZES[2]]) {
        const drawn = frame(scripted(name), columns, rows);
        const size = columns === 120 && STATE_WORD[word].length === 1 ? ['large', 'small'] : ['small'];
        const found = size.some((s) =>
          blockText(STATE_WORD[word][0], { size: s as 'large', ascii: false }).every((row) =>
            drawn.some((line) => line.includes(row.trimEnd())),
          ),
        );
        expect(found).toBe(true);
        expect(drawn.join('\n')).toMatch(text);
      }
    },
  );

  it('between runs at 80 × 24 in ASCII at least the latest 3 of 5 runs stand in the table', () => {
    const drawn = frame(scripted('run good'), 80, 24, true).join('\n');
    for (const run of [3, 4, 5]) expect(drawn).toMatch(new RegExp(`^ +${run} +\\d+\\.\\d s`, 'm'));
    expect(drawn).toMatch(/mean 53\.50 s/);
    expect(drawn).toMatch(/Carrier warm/);
  });

  it('no two states look alike without colour', () => {
    const heads = Object.keys(SAYS).map((name) => frame(scripted(name)).slice(1, 9).join('\n'));
    expect(new Set(heads).size).toBe(heads.length);
  });

  it.each(Object.keys(SCRIPTS))('%s: is marked SIMULATED, and never orders a press about', (name) => {
    const all = frame(scripted(name)).join('\n');
    expect(all).toContain('SIMULATED');
    expect(all).not.toMatch(/open the press/i);
    expect(frame(new Trial({ simulated: false }).readings(0, 5)).join('\n')).not.toContain('SIMULATED');
  });

  it.each(['heating', 'hold', 'run good', 'stale'])(
    '%s: every temperature carries its unit, °F by default and °C after F',
    (name) => {
      for (const [unit, trial] of [
        ['F', scripted(name)],
        ['C', scripted(name).key('f', 400)],
      ] as const) {
        const view = trialView(trial.state, { columns: 80, rows: 24, ascii: false });
        for (const { text } of view.channels) expect(text).toMatch(new RegExp(` \\d+\\.\\d °${unit}$`));
        expect(view.conditions).toMatch(unit === 'F' ? /350 °F \(176\.7 °C\)/ : /176\.7 °C \(350 °F\)/);
        if (view.figure.text !== '---') expect(view.figure.unit).toMatch(/^(°[FC]|s)$/);
      }
    },
  );

  it('shows the crossing curve’s 350 °F figure: 176.667 °C reads 350', () => {
    const trial = new Trial({ roles: ['bond-line'] });
    trial.session = {
      ...trial.session,
      latestReading: { timeS: 1, arrivedUs: 1e6, values: [{ kind: 'temperature', temperatureC: 176.667 }] },
    };
    const view = trialView(trial.report(1, {}).state, { columns: 80, rows: 24, ascii: false });
    expect(view.figure).toMatchObject({ text: '350', unit: '°F', faded: false });
  });

  it('shows both dwell rules with the same weight', () => {
    const rows = trialFrame(trialView(scripted('run good').state, { columns: 80, rows: 24, ascii: false }));
    const mean = rows.find((row) => rowText(row).includes('common mean rule'));
    const full = rows.find((row) => rowText(row).includes('full hold in the next run'));
    expect(mean?.[0]?.role).toBe('strong');
    expect(full?.[0]?.role).toBe(mean?.[0]?.role);
  });

  it('draws an old figure in a broken shade and a fault as no figure at all', () => {
    expect(frame(scripted('stale')).slice(1, 8).join('')).toContain('░');
    const view = trialView(scripted('fault').state, { columns: 80, rows: 24, ascii: false });
    expect(view.figure.text).toBe('---');
  });

  it('names only keys that work now', () => {
    const keys = (name: string) =>
      trialView(scripted(name).state, { columns: 80, rows: 24, ascii: false }).keys.map((k) => k.key);
    expect(keys('waiting')).toEqual(['C', 'N', 'F', 'H', 'Q']);
    expect(keys('heating')).toEqual(['O', 'X', 'N', 'F', 'H', 'Q']);
    expect(keys('run good')).toEqual(['C', 'D', 'A', 'R', '↑ ↓', 'V', 'X', 'N', 'F', 'H', 'Q']);
    expect(keys('cautions')).toEqual(['Enter', 'H']);
  });

  it.each([
    [79, 24],
    [80, 23],
    [20, 5],
    [1, 1],
  ])('says a window of %i × %i is too small and that recording goes on', (columns, rows) => {
    const drawn = frame(scripted('heating'), columns, rows);
    expect(drawn.length).toBe(Math.max(1, rows - 1));
    if (columns >= 79) expect(drawn.join(' ')).toMatch(/needs 80 × 24.*Recording\s+goes\s+on/s);
  });

  it('flashes under three times a second', () => {
    const trial = scripted('hold done');
    trial.send({ kind: 'session', state: trial.session, events: [], atUs: 195e6 });
    const start = 187e6;
    const flashes = Array.from({ length: 60 }, (_, i) => {
      const view = trialView(
        { ...trial.state, nowUs: start + i * 50_000 },
        { columns: 80, rows: 24, ascii: false },
      );
      return view.state.flash;
    });
    const changes = flashes.filter((flash, i) => i > 0 && flash && !flashes[i - 1]).length;
    expect(changes).toBeGreaterThan(0);
    expect(changes / 3).toBeLessThan(3);
  });

  it('shows every caution on one page at 80 × 24, the one on safety devices first', () => {
    const all = frame(scripted('cautions')).join('\n');
    expect(all).toMatch(/no safety device/);
    expect(all).toMatch(/earth\s+checked/);
  });

  it.each([
    [80, 24],
    [120, 36],
  ])(
    'the status line at %i × %i has reader, rate, lost lines, free disk and store, for a port as for the simulation',
    (columns, rows) => {
      for (const readerName of ['simulated reader', '/dev/ttyACM0', '/dev/serial/by-id/usb-reader-0001']) {
        const trial = new Trial({
          readerName,
          storePath: '/data/shop/.local/share/dwellwright/dwellwright.db',
        });
        const status = frame(trial.readings(0, 5), columns, rows).at(-1) ?? '';
        expect(status).toMatch(/simulated|ttyACM0|usb-reader-0001/);
        for (const part of [/10\.0 readings\/s/, /0 lost/, /82 GB free/, /dwellwright\.db/])
          expect(status).toMatch(part);
      }
    },
  );

  it('two keys within 50 ms: that none was taken stands in block letters for 5 s', () => {
    const trial = scripted('heating');
    const atUs = trial.state.nowUs;
    for (const [i, character] of [...'ox'].entries())
      trial.send({
        kind: 'input',
        input: { kind: 'character', character, atUs: atUs + i * 2e4 },
        atUs: atUs + i * 2e4,
      });
    trial.tick(atUs / 1e6 + 0.2);
    const view = (t: ScriptedTrial) => trialView(t.state, { columns: 80, rows: 24, ascii: false });
    expect(view(trial).next).toBe('KEY AGAIN');
    expect(view(trial.tick(atUs / 1e6 + 6)).next).not.toBe('KEY AGAIN');
  });
});
