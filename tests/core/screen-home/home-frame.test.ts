import { describe, expect, it } from 'vitest';
import { blockText } from '../../../src/core/chart/block-text.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { DrivenHome, EMPTY_SHOP, PAGES, SHOP, trialFacts } from './shop.ts';

const SIZES = [
  [80, 24],
  [120, 36],
] as const;

/** What each page must say, whatever the colours and the size. */
const SAYS: Readonly<Record<string, RegExp>> = {
  'home, empty store': /First use: name the press.*none yet.*none yet/s,
  home: /WB-212 on press North.*Reader\s+\/dev\/ttyACM0 plugged in.*Presses\s+North/s,
  'home, open trial': /still open.*X\s+close the open trial/s,
  'home, reader gone': /reader at \/dev\/ttyACM0 is not there/,
  'home, quitting': /Leave Dwellwright\? Everything is kept\./,
  'question for text': /What is the press called\?.* N_ /s,
  'question, refused': /Not taken: ram bore: "200" has no unit/,
  'question with choices': /Where is the reader\?.*1 {3}\/dev\/ttyACM0.*simulated reader/s,
  'channels one by one': /What is channel 1 laid on\?.*upper platen/s,
  'set-up': /Presses\s+North.*Assemblies\s+WB-212.*Reader/s,
  presses: /North\s+1 × 200 mm\s+450 °F\s+2\.0 psi/,
  assemblies: /WB-212\s+212 \/ 168 mm\s+brake plate, steel\s+350 °F\s+120 s/,
  'start of a trial': /North, ram 200 mm, platens 450 °F \(232\.2 °C\).*hold 120 s.*\/dev\/ttyACM0/s,
  'start, nothing known': /Press\s+\? choose/,
  // π/4 · (212² − 168²) = 13132 mm²; 225 psi · 13132 / (π/4 · 200²) = 94.05 psi.
  pressure: /gauge 94(\.05)? psi|gauge 94\.1 psi/,
  trials: /25 Nov 2026 11:08\s+WB-212\s+North\s+3\s+3\s+53\.20 s/,
  'trials, none': /No trial yet/,
  recipes: /WB-212\s+North\s+2\s+175 s\s+2026-11-25\s+SIMULATED.*provisional.*version 2.*rests on 3 runs/s,
  'recipes, none': /No recipe yet/,
  trial: /53\.50 s.*suspect.*carrier warm/s,
  'trial, setting aside': /Set run 1 aside\. Why\?\s+w_/,
  'trial, replay': /× 100/,
  // 232 − 208 · exp(−53.6 / 40.5) = 176.63 °C = 349.9 °F (closed form of the domain brief).
  chart: /at 53\.6 s from press closed.*B bond line 349\.9 °F.*U upper platen 449\.6 °F/s,
  overlay: /1 run 1 349\.9 °F.*4 run 4 349\.9 °F/s,
  'chart without readings': /no readings to draw/,
  'help of the home': /Enter\s+does what stands in large letters/,
  'help of a question': /Enter alone takes it/,
  'help of a trial': /X\s+sets the run aside, with a reason/,
  'help of a chart': /move the cursor/,
  cycles: /25 Nov 13:20\s+WB-212\s+North\s+2\s+100\.0 s\s+opened early, more/,
  'cycles, none': /No cycle of production logged yet/,
  cycle: /hold verified; 121\.5 s counted, 120 s wanted at 350 °F/,
  'cycle, without a reader': /timed without a reader/,
  'chart of a cycle': /at 80(\.0)? s from press closed/,
  'help of the cycles': /one press after the other/,
  'help of a cycle': /above or below in the list/,
  'help of a cycle’s chart': /recipe’s own runs/,
};

describe('frames of the screens around the trial', () => {
  it('has a word for every page', () => {
    expect(Object.keys(SAYS).sort()).toEqual(Object.keys(PAGES).sort());
  });

  it.each(Object.keys(PAGES))(
    '%s: one row less than the window, each as wide as it, also in ASCII',
    (name) => {
      for (const [columns, rows] of SIZES) {
        for (const ascii of [false, true]) {
          const drawn = PAGES[name]!().rows(columns, rows, ascii).map(rowText);
          expect(drawn).toHaveLength(rows - 1);
          expect(new Set(drawn.map((row) => row.length))).toEqual(new Set([columns]));
          if (ascii) expect(drawn.join('')).toMatch(/^[ -~]*$/);
        }
      }
    },
  );

  it.each(Object.entries(SAYS))('%s: says so at 80 × 24 and at 120 × 36', (name, said) => {
    for (const [columns, rows] of SIZES) expect(PAGES[name]!().text(columns, rows)).toMatch(said);
  });

  it.each(Object.keys(PAGES))(
    '%s: names its keys and where the store is, and orders no press about',
    (name) => {
      const rows = PAGES[name]!().rows().map(rowText);
      expect(rows.at(-1)).toContain('store /data/store.db');
      expect(rows.slice(-5, -1).join(' ')).toMatch(/ (Esc|Q|Y) /);
      expect(rows.join(' ')).not.toMatch(/open the press/i);
    },
  );

  it.each(Object.keys(PAGES))(
    '%s: no temperature, length, time or pressure stands without its unit',
    (name) => {
      // A decimal number is always a quantity here.
      const text = PAGES[name]!()
        .text(120, 36)
        .replaceAll(/store \S+/g, '');
      for (const [, after] of text.matchAll(/\d+\.\d+([^\n]{0,4})/g))
        expect(after).toMatch(/^( ?(°|s\b|psi|mm|in)| to)/);
    },
  );

  it('writes the next thing in block letters of three rows, five in a large window', () => {
    const small = blockText('SET UP', { size: 'small', ascii: false });
    const large = blockText('SET UP', { size: 'large', ascii: false });
    const home = PAGES['home, empty store']!();
    for (const row of small) expect(home.text(80, 24)).toContain(row.trimEnd());
    for (const row of large) expect(home.text(120, 36)).toContain(row.trimEnd());
  });

  it('marks a simulated trial as simulated on the home, in the list, on its page and in its chart', () => {
    const facts = { ...SHOP, trials: [trialFacts({ simulated: true })] };
    const home = new DrivenHome(facts);
    expect(home.text()).toContain('SIMULATED');
    expect(home.keys('r').text()).toContain('SIMULATED');
    expect(home.keys('enter').rows()[0]).toContainEqual({ text: ' SIMULATED ', role: 'flash' });
    expect(home.text().split('\n')[0]).toContain('SIMULATED');
    expect(new DrivenHome(SHOP).keys('r').text()).not.toContain('SIMULATED');
  });

  it('marks the open trial of a simulated reader as both', () => {
    const facts = { ...SHOP, trials: [trialFacts({ simulated: true, closedAt: null })] };
    expect(new DrivenHome(facts).text()).toMatch(/OPEN SIM\./);
  });

  it('names at most as many as fit, and how many more there are', () => {
    const presses = Array.from({ length: 12 }, (_, i) => ({ ...SHOP.presses[0]!, name: `Press ${i + 1}` }));
    const trials = Array.from({ length: 12 }, (_, i) => trialFacts({ trialId: `t${i}` }));
    const text = new DrivenHome({ ...SHOP, presses, trials, trialCount: 240 }).text();
    expect(text).toMatch(/Presses\s+Press 1, .*and \d+ more/);
    expect(text).toMatch(/Recent trials {2}and 2\d\d more/);
  });

  it('shows entries that other parts add, with their key', () => {
    const entries = [{ key: 'w', word: 'Warm-up', detail: 'cold to ready' }];
    const home = new DrivenHome({ ...SHOP, entries });
    expect(home.text()).toMatch(/W {3}Warm-up {3}cold to ready/);
    expect(home.keys('w').intents).toEqual([{ kind: 'entry', key: 'w' }]);
  });

  it.each([
    [79, 24],
    [80, 23],
    [20, 5],
    [1, 1],
  ])('says that a window of %i × %i is too small', (columns, rows) => {
    const drawn = new DrivenHome().rows(columns, rows).map(rowText);
    expect(drawn).toHaveLength(Math.max(1, rows - 1));
    if (columns >= 79) expect(drawn.join(' ')).toMatch(/needs 80 × 24/);
  });

  it('keeps the last row of a long list in view', () => {
    const trials = Array.from({ length: 60 }, (_, i) =>
      trialFacts({ trialId: `t${i}`, assemblyName: `A-${i}` }),
    );
    const home = new DrivenHome({ ...SHOP, trials, trialCount: 60 }).keys('r');
    expect(home.text()).toContain('A-0 ');
    home.keys(...new Array<string>(70).fill('down'));
    expect(home.text()).toMatch(/> .*A-59/);
    expect(home.text()).not.toContain('A-0 ');
  });

  it('tells an empty store from one with a reader looked for', () => {
    expect(new DrivenHome({ ...EMPTY_SHOP, ports: null }).text()).toMatch(/Reader +looking for one/);
    expect(new DrivenHome(EMPTY_SHOP).text()).toContain('none plugged in');
  });
});
