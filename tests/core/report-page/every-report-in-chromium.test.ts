import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { reportPage } from '../../../src/core/report-page/report-page.ts';
import { pageTypeface } from '../../../src/program/reports/typeface.ts';
import { everyReport } from '../report/every-report.ts';

/** Debian's Chromium. Without it these tests are skipped and say so; on CI they fail. */
const BROWSER = '/usr/bin/chromium';
const missing = !existsSync(BROWSER) && !process.env.CI;
const FLAGS = ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'];

const KINDS = ['trial', 'recheck', 'lot', 'comparison', 'survey'] as const;
/** Markup, a formula, a direction mark, an escape sequence, an emoji, and a name without a space. */
const HOSTILE = `"><img src=x onerror=alert(1)></svg><style>*{display:none}</style>=cmd|'/c calc'!A1 \u202Egnp.exe \u001b[31m 🔥 ${'W'.repeat(120)}`;
const folder = mkdtempSync(join(tmpdir(), 'dwellwright-pages-'));

describe.skipIf(missing)(
  `every kind of report with 40 runs, and with hostile text, in Chromium${missing ? ` (skipped: no ${BROWSER})` : ''}`,
  () => {
    let browser: Browser;
    let page: Page;
    const troubles: string[] = [];
    const asked: string[] = [];
    const reports = { forty: everyReport(40), hostile: everyReport(3, HOSTILE) };

    beforeAll(async () => {
      const typeface = pageTypeface();
      for (const [which, all] of Object.entries(reports))
        for (const [kind, content] of Object.entries(all))
          writeFileSync(join(folder, `${which}-${kind}.html`), reportPage(content, typeface));
      browser = await chromium.launch({ executablePath: BROWSER, args: FLAGS });
      page = await browser.newPage();
      page.on('console', (message) => troubles.push(`${message.type()}: ${message.text()}`));
      page.on('pageerror', (error) => troubles.push(String(error)));
      page.on('dialog', (dialog) => troubles.push(`dialog: ${dialog.message()}`));
      page.on('request', (request) => asked.push(request.url().slice(0, 60)));
    });
    afterAll(() => browser?.close());

    const open = async (which: 'forty' | 'hostile', kind: string, width = 816) => {
      troubles.length = 0;
      asked.length = 0;
      await page.setViewportSize({ width, height: 1056 });
      await page.goto(`file://${join(folder, `${which}-${kind}.html`)}`);
    };

    /** What scrolls on a screen is cut on paper. */
    const cutOff = async () => {
      await page.emulateMedia({ media: 'print' });
      const cut =
        await page.evaluate(`[...document.querySelectorAll('table, figure, dl, svg, header *')].filter((one) =>
        one.getBoundingClientRect().right > document.documentElement.clientWidth + 1 ||
        one.scrollWidth > one.clientWidth + 1 && one.tagName !== 'svg' && one.clientWidth > 0).map((one) => one.tagName + ' ' + one.textContent.slice(0, 60))`);
      await page.emulateMedia({ media: null });
      return cut;
    };

    it.each(KINDS)('%s: a name of any length leaves the title its room', async (kind) => {
      await open('hostile', kind);
      const title = await page.locator('h1').boundingBox();
      // The widest title is three words of 2 rem: one line of 37 px, or two.
      expect(title?.width).toBeGreaterThan(300);
      expect(title?.height).toBeLessThan(90);
    });

    it.each(KINDS.flatMap((kind) => (['forty', 'hostile'] as const).map((which) => [kind, which] as const)))(
      '%s, %s: no error, no request, nothing wider than the window, every word of a chart inside it',
      async (kind, which) => {
        await open(which, kind);
        expect(troubles).toEqual([]);
        expect(asked.filter((url) => !url.startsWith('data:font/') && !url.startsWith('file://'))).toEqual(
          [],
        );
        expect(asked.filter((url) => url.startsWith('file://'))).toHaveLength(1);
        for (const width of [816, 700, 360]) {
          await page.setViewportSize({ width, height: 1000 });
          const over = `document.documentElement.scrollWidth - document.documentElement.clientWidth`;
          expect([width, await page.evaluate(over)]).toEqual([width, 0]);
        }
        await page.setViewportSize({ width: 816, height: 1000 });
        const outside = await page.evaluate(`[...document.querySelectorAll('svg')].flatMap((svg) => {
          const box = svg.getBoundingClientRect();
          return [...svg.querySelectorAll('text')].filter((text) => {
            const { left, right, top, bottom } = text.getBoundingClientRect();
            return left < box.left - 1 || right > box.right + 1 || top < box.top - 1 || bottom > box.bottom + 1;
          }).map((text) => text.textContent);
        })`);
        expect(outside).toEqual([]);
        expect(await page.locator('svg').count()).toBeGreaterThan(0);
      },
    );

    it.each(KINDS)('%s: hostile text stands as text, no element of it comes to life', async (kind) => {
      await open('hostile', kind);
      expect(await page.locator('img, script, iframe, link').count()).toBe(0);
      expect(await page.locator('style').count()).toBe(1);
      const text = (await page.locator('body').textContent()) ?? '';
      expect(text).toContain('<img src=x onerror=');
      expect(text).toContain('\\u{202E}gnp.exe');
      expect(text).not.toMatch(/[\u202A-\u202E\u2066-\u2069\u001b]/u);
    });

    // Printable width: Letter 216 mm, A4 210 mm, less 2 × 15 mm of margins, at 96 px an inch.
    it.each(
      KINDS.flatMap((kind) =>
        (
          [
            ['Letter', 8.5 * 96 - (30 / 25.4) * 96],
            ['A4', ((210 - 30) / 25.4) * 96],
          ] as const
        ).map(([paper, width]) => [kind, paper, Math.floor(width)] as const),
      ),
    )('%s prints on %s with no table or chart cut off at %i px', async (kind, paper, width) => {
      for (const which of ['hostile', 'forty'] as const) {
        await open(which, kind, width);
        expect([which, await cutOff()]).toEqual([which, []]);
      }
      const printed = await page.pdf({ format: paper });
      const pages = printed.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
      expect(pages).toBeGreaterThanOrEqual(kind === 'survey' ? 2 : 3);
      expect(pages).toBeLessThanOrEqual(16);
    });
  },
);
