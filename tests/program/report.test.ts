import { createHash } from 'node:crypto';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

/** Debian's Chromium. Without it these tests are skipped and say so; on CI they fail. */
const BROWSER = '/usr/bin/chromium';
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const missing = !existsSync(BROWSER) && !process.env.CI;

const recordings = join(import.meta.dirname, '..', '..', 'recordings');
const north = [1, 2, 3, 4, 5].map((run) => join(recordings, `wb-212-north-run-${run}.dwell.txt`));
const two = north.slice(0, 2);
const warmUp = (press: string) => join(recordings, `warm-up-${press}-1.dwell.txt`);
const warm = join(recordings, 'failure-carrier-warm.dwell.txt');
const folder = temporaryFolder();
const out = (name: string) => join(folder, name);

describe.skipIf(missing)(
  `report … --out FILE.html, opened in Chromium${missing ? ` (skipped: no ${BROWSER})` : ''}`,
  () => {
    let browser: Browser;
    let page: Page;
    const troubles: string[] = [];
    const asked: string[] = [];
    const file = out('report.html');

    beforeAll(async () => {
      const ended = runProgram(['report', ...north, warm, '--out', file]);
      expect([ended.code, ended.err]).toEqual([0, '']);
      browser = await chromium.launch({ executablePath: BROWSER, args: FLAGS });
      page = await browser.newPage();
      page.on('console', (message) => troubles.push(`${message.type()}: ${message.text()}`));
      page.on('pageerror', (error) => troubles.push(String(error)));
      page.on('request', (request) => asked.push(request.url().slice(0, 40)));
      await page.goto(`file://${file}`);
    });
    afterAll(() => browser?.close());

    it('opens without an error, a warning or a request beyond itself and its typeface', () => {
      expect(troubles).toEqual([]);
      expect(asked.filter((url) => !url.startsWith('data:font/woff2') && !url.startsWith('file://'))).toEqual(
        [],
      );
      expect(asked.filter((url) => url.startsWith('file://'))).toHaveLength(1);
    });

    // Widths at 96 px an inch: Letter 8.5 in = 816, A4 210 mm = 794; printable 7.3 in = 700; a telephone 360.
    it.each([816, 794, 700, 360])('has nothing wider than a window of %i px', async (width) => {
      await page.setViewportSize({ width, height: 1000 });
      const overflowing = await page.evaluate(
        `document.documentElement.scrollWidth - document.documentElement.clientWidth`,
      );
      expect(overflowing).toBe(0);
    });

    it('shows both dwells equally large, the same as replay prints', async () => {
      await page.setViewportSize({ width: 816, height: 1056 });
      const replayed = JSON.parse(runProgram(['replay', ...north, warm, '--json']).out);
      const boxes = page.locator('.dwell');
      expect(await boxes.count()).toBe(2);
      expect(await boxes.locator('.value').allTextContents()).toEqual([
        `${replayed.dwell.byRuleTotalS.mean} s`,
        `${replayed.dwell.byRuleTotalS['next-run']} s`,
      ]);
      const [one, other] = [await boxes.nth(0).boundingBox(), await boxes.nth(1).boundingBox()];
      expect([one?.width, one?.height, one?.y]).toEqual([other?.width, other?.height, other?.y]);
    });

    it('is set in its own typeface', async () => {
      const faces = await page.evaluate(
        `document.fonts.ready.then((all) => [...all].map((one) => one.status))`,
      );
      expect(faces).toEqual(['loaded', 'loaded']);
    });

    it('shows each chart whole: every word lies inside its picture', async () => {
      const outside = await page.evaluate(`[...document.querySelectorAll('svg')].flatMap((svg) => {
        const box = svg.getBoundingClientRect();
        return [...svg.querySelectorAll('text')].filter((text) => {
          const { left, right, top, bottom } = text.getBoundingClientRect();
          return left < box.left - 0.5 || right > box.right + 0.5 || top < box.top - 0.5 || bottom > box.bottom + 0.5;
        }).map((text) => text.textContent);
      })`);
      expect(outside).toEqual([]);
      expect(await page.locator('svg').count()).toBe(4);
    });

    it('shows no two words of a chart one over the other', async () => {
      const crowded = await page.evaluate(`[...document.querySelectorAll('svg')].flatMap((svg) => {
        const texts = [...svg.querySelectorAll('text')].map((text) => ({ words: text.textContent, box: text.getBoundingClientRect() }));
        return texts.flatMap((one, index) => texts.slice(index + 1).filter((other) =>
          Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left) > 1 &&
          Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top) > 3
        ).map((other) => one.words + ' | ' + other.words));
      })`);
      expect(crowded).toEqual([]);
    });

    it('says SIMULATED, which runs are left out and why, and each recording’s hash', async () => {
      const text = await page.locator('body').textContent();
      expect(text).toContain('SIMULATED');
      expect(text).toContain('Carrier started warm');
      for (const name of [...north, warm]) {
        expect(text).toContain(createHash('sha256').update(readFileSync(name)).digest('hex'));
      }
    });

    it.each(['Letter', 'A4'])('prints on %s in at most seven pages', async (format) => {
      const printed = await page.pdf({ format, path: out(`${format}.pdf`) });
      const pages = printed.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
      expect(pages).toBeGreaterThanOrEqual(3);
      expect(pages).toBeLessThanOrEqual(7);
    });
  },
);

describe('report of a stored trial', () => {
  const store = { DWELLWRIGHT_STORE: join(folder, 'store.db') };
  const demo = runProgram(
    ['demo', '--plain', '--speed', '1000', '--runs', '3', '--store', store.DWELLWRIGHT_STORE],
    store,
  );
  const trialId = JSON.parse(runProgram(['trials', '--json'], store).out).trials[0].trialId;
  const reason = '"><script>document.title="run"</script>\u202E';

  it('is written as a page and as a PDF, with the decisions on its runs', () => {
    expect(demo.code).toBe(0);
    expect(runProgram(['set-aside', trialId, '2', '--reason', reason], store).code).toBe(0);
    const page = runProgram(
      ['report', '--trial', trialId, '--gauge', '90psi', '--out', out('trial.html')],
      store,
    );
    const pdf = runProgram(['report', '--trial', trialId, '--out', out('trial.pdf'), '--paper', 'a4'], store);
    expect([page.code, page.err, pdf.code, pdf.err]).toEqual([0, '', 0, '']);
    const html = readFileSync(out('trial.html'), 'utf8');
    expect(html).not.toMatch(/<script/i);
    expect(html).toContain('Set aside because: &quot;&gt;&lt;script&gt;');
    expect(html).toContain('\\u{202E}');
    expect(html).toContain('good, set aside');
    // 200 mm ram on a 212/168 mm ring: area ratio 200² ÷ (212² − 168²) = 2.392; 90 psi makes 215 psi.
    expect(html).toContain('215 psi (1485 kPa), inside the wanted band');
    expect(readFileSync(out('trial.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('holds its runs against the recipe that the demo made of it: with one of them set aside, it holds', () => {
    const { code, err } = runProgram(
      ['report', '--trial', trialId, '--recheck', '--out', out('recheck.html')],
      store,
    );
    expect([code, err]).toEqual([0, '']);
    const html = readFileSync(out('recheck.html'), 'utf8');
    expect(html).toContain('Recipe held against these runs');
    expect(html).toContain('THE RECIPE HOLDS');
    expect(html).toContain('Accepted as recipe version 1');
    // By hand: 225 psi × (212² − 168²) ÷ 200² = 94.05 psi.
    expect(html).toMatch(/Version 1: platens set to 450 °F .*ram gauge 94 psi .*225 psi .*on the ring/);
  });

  it('sets a trial on another press beside it, and says whether the recipe covers that press', () => {
    const south = [1, 2, 3].map((run) => join(recordings, `wb-212-south-run-${run}.dwell.txt`));
    expect(runProgram(['import', ...south, '--trial', 'south'], store).code).toBe(0);
    const { code, err } = runProgram(
      ['report', '--trial', trialId, '--against', 'south', '--out', out('against.html')],
      store,
    );
    expect([code, err]).toEqual([0, '']);
    const html = readFileSync(out('against.html'), 'utf8');
    expect(html).toContain('The same assembly on press South');
    expect(html).toMatch(/South less North: [+−]\d/);
    expect(html).toMatch(/recipe (?:covers|is too short for) South|covers South|too short for South/);
  });

  it('gives the hash that the exported recording’s file has', () => {
    const id = JSON.parse(runProgram(['recordings', '--json'], store).out).recordings[0]
      .recordingId as string;
    const exported = out('exported.dwell.txt');
    expect(runProgram(['recordings', id, '--out', exported], store).code).toBe(0);
    const hash = createHash('sha256').update(readFileSync(exported)).digest('hex');
    expect(readFileSync(out('trial.html'), 'utf8')).toContain(hash);
  });
});

describe('report --recheck', () => {
  it('refuses where the store holds no recipe', () => {
    const { code, err } = runProgram(['report', north[0] as string, '--recheck', '--out', out('none.html')]);
    expect(code).toBe(2);
    expect(err).toContain('no such recipe in force');
    expect(existsSync(out('none.html'))).toBe(false);
  });
});

describe('report --first --second', () => {
  it('compares two presses by their warm-ups', () => {
    const { code, err } = runProgram([
      'report',
      '--first',
      warmUp('north'),
      '--second',
      warmUp('south'),
      '--out',
      out('presses.html'),
    ]);
    expect([code, err]).toEqual([0, '']);
    const html = readFileSync(out('presses.html'), 'utf8');
    for (const words of [
      'South against North',
      'Minutes from power-on',
      'SIMULATED',
      'What the figures mean',
    ])
      expect(html).toContain(words);
    expect(html).toContain(
      createHash('sha256')
        .update(readFileSync(warmUp('south')))
        .digest('hex'),
    );
  });

  it('refuses one side alone, and a trial beside it', () => {
    const one = runProgram(['report', '--first', warmUp('north'), '--out', out('one.html')]);
    expect([one.code, one.err]).toEqual([2, expect.stringContaining('two sides are needed')]);
    const both = runProgram(['report', '--trial', 'x', '--first', warmUp('north'), '--out', out('one.html')]);
    expect([both.code, both.err]).toEqual([2, expect.stringContaining('both a trial and two sides')]);
  });
});

describe('chart', () => {
  it.each([
    ['one run, all channels', [north[0] as string], 'Lower platen (channel 4)'],
    ['an overlay of five', north, 'Run 5: '],
    ['crossings', [...two, '--view', 'crossing'], 'Target 350 °F'],
    ['soak times', [...two, '--view', 'soak-times'], 'next run below'],
    ['dwell', [...two, '--view', 'dwell'], 'hold 120 s'],
    ['a warm-up', [warmUp('south'), '--view', 'warm-up'], 'South, lower platen'],
    [
      'warm-ups of two presses',
      ['--first', warmUp('north'), '--second', warmUp('south')],
      'North, upper platen',
    ],
    ['one run of two', [...two, '--run', '2'], 'opened '],
  ])('writes %s as SVG', (name, args, words) => {
    const file = out(`${name}.svg`);
    const { code, err } = runProgram(['chart', ...args, '--out', file]);
    expect([code, err]).toEqual([0, '']);
    const svg = readFileSync(file, 'utf8');
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" viewBox="0 0 720 \d+" width="720"/);
    expect(svg).toContain(words);
  });

  it('writes a PNG as wide as asked', () => {
    const file = out('overlay.png');
    expect(runProgram(['chart', ...two, '--out', file, '--width', '1000']).code).toBe(0);
    expect(readFileSync(file).readUInt32BE(16)).toBe(1000);
    expect(statSync(file).size).toBeGreaterThan(20_000);
  });
});

describe('what report and chart refuse', () => {
  it.each([
    ['another ending', ['report', north[0] as string, '--out', out('x.doc')], '.html or .pdf'],
    ['no file', ['report', '--out', out('x.pdf')], 'no file and no --trial given'],
    ['both', ['report', north[0] as string, '--trial', 'x', '--out', out('x.pdf')], 'both files and --trial'],
    [
      'two assemblies',
      ['report', north[0] as string, join(recordings, 'wb-150-north-run-1.dwell.txt'), '--out', out('x.pdf')],
      'WB-212 and WB-150',
    ],
    ['a run that is not there', ['chart', ...two, '--run', '3', '--out', out('x.png')], '1 to 2'],
    [
      'files beside two sides',
      [
        'chart',
        warmUp('north'),
        '--first',
        warmUp('north'),
        '--second',
        warmUp('south'),
        '--out',
        out('x.png'),
      ],
      'both files and sides',
    ],
    [
      'a picture wider than anyone needs',
      ['chart', ...two, '--width', '90000', '--out', out('x.png')],
      '--width',
    ],
  ])('%s: exit code 2, says what to do, writes nothing', (_, args, words) => {
    const { code, err } = runProgram(args);
    expect(code).toBe(2);
    expect(err).toContain(words);
    expect(err).toContain('what to do');
    for (const name of ['x.doc', 'x.pdf', 'x.png']) expect(existsSync(out(name))).toBe(false);
  });

  it('to write over a recording that it reads', () => {
    const copy = out('copy.html');
    writeFileSync(copy, readFileSync(north[0] as string));
    const { code, err } = runProgram(['report', copy, '--out', copy]);
    expect(code).toBe(2);
    expect(err).toContain('one of the files to be read');
    expect(readFileSync(copy)).toEqual(readFileSync(north[0] as string));
  });
});
