import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { reportPdf } from '../../../src/adapters/pdf/report-pdf.ts';
import { typefaceFiles } from '../../../src/program/reports/typeface.ts';
import { everyReport } from '../../core/report/every-report.ts';
import { poppler } from './poppler.ts';

const KINDS = ['trial', 'recheck', 'lot', 'comparison', 'survey'] as const;
const HOSTILE = `<b>bold</b> =cmd|'/c calc'!A1 \u202Egnp.exe \u001b[31m 🔥 ${'W'.repeat(120)}`;
/** Points: ANSI Letter 8.5 × 11 in, ISO 216 A4 210 × 297 mm. */
const WIDTH = { LETTER: 612, A4: 595.28 } as const;
const folder = mkdtempSync(join(tmpdir(), 'dwellwright-pdfs-'));
const says = (program: string, ...args: readonly string[]): string =>
  spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 26 }).stdout;
const file = (which: string, kind: string) => join(folder, `${which}-${kind}.pdf`);

describe.skipIf(poppler.missing)(
  `every kind of report as a PDF, with 40 runs on A4 and with hostile text on Letter${poppler.why}`,
  () => {
    beforeAll(async () => {
      const typeface = typefaceFiles();
      for (const [kind, content] of Object.entries(everyReport(40)))
        writeFileSync(file('forty', kind), await reportPdf(content, { typeface, paper: 'A4' }));
      for (const [kind, content] of Object.entries(everyReport(3, HOSTILE)))
        writeFileSync(file('hostile', kind), await reportPdf(content, { typeface, paper: 'LETTER' }));
    }, 120_000);

    const cases = KINDS.flatMap((kind) =>
      (['forty', 'hostile'] as const).map((which) => [kind, which] as const),
    );

    it.each(cases)('%s, %s: no word beyond the margins, typeface inside, no script', (kind, which) => {
      const path = file(which, kind);
      const words = says('pdftotext', '-bbox', path, '-');
      const ends = [...words.matchAll(/xMin="([\d.]+)".*?xMax="([\d.]+)" yMax="([\d.]+)"/g)];
      expect(ends.length).toBeGreaterThan(100);
      const width = WIDTH[which === 'forty' ? 'A4' : 'LETTER'];
      expect(Math.max(...ends.map((end) => Number(end[2])))).toBeLessThanOrEqual(width - 50 + 1.5);
      expect(Math.min(...ends.map((end) => Number(end[1])))).toBeGreaterThanOrEqual(50 - 1.5);
      expect(says('pdfinfo', path)).toContain('JavaScript:      no');
      const fonts = says('pdffonts', path).trim().split('\n').slice(2);
      expect(fonts.length).toBeGreaterThan(0);
      for (const font of fonts)
        expect(font).toMatch(/SourceSans3-\w+\s+CID TrueType\s+Identity-H\s+yes yes yes/);
    });

    it.each(KINDS)('%s: each page says which of how many, and 40 runs take several', (kind) => {
      const path = file('forty', kind);
      const pages = Number(/Pages:\s+(\d+)/.exec(says('pdfinfo', path))?.[1]);
      expect(pages).toBeGreaterThanOrEqual(kind === 'survey' ? 2 : 3);
      expect(pages).toBeLessThanOrEqual(16);
      const text = says('pdftotext', path, '-');
      for (let page = 1; page <= pages; page++) expect(text).toContain(`Page ${page} of ${pages}`);
    });

    it.each(['trial', 'recheck', 'lot'] as const)(
      '%s: the heading of the table of 40 comes again on its second page',
      (kind) => {
        const heading = { trial: 'Verdict', recheck: 'As stored', lot: 'Press closed' }[kind];
        const count = says('pdftotext', '-layout', file('forty', kind), '-').split(heading).length - 1;
        expect(count).toBeGreaterThanOrEqual(2);
      },
    );

    it.each(KINDS)(
      '%s prints hostile text as it stands, direction marks, escapes and emoji by their numbers',
      (kind) => {
        const text = says('pdftotext', file('hostile', kind), '-').replace(/\s+/g, '');
        expect(text).toContain('<b>bold</b>');
        expect(text).toContain('\\u{202E}gnp.exe');
        expect(text).toContain('\\x1B[31m');
        expect(text).toContain('\\u{1F525}');
        expect(text).not.toMatch(/[\u202A-\u202E\u2066-\u2069\u001b]/u);
      },
    );
  },
);
