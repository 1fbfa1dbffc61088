import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { reportPdf } from '../../../src/adapters/pdf/report-pdf.ts';
import { trialReport } from '../../../src/core/report/trial-report.ts';
import { typefaceFiles } from '../../../src/program/reports/typeface.ts';
import { trialReportInput } from '../../core/report/trial-report-input.ts';
import { trialRun } from '../../core/trial/trial-run.ts';
import { poppler } from './poppler.ts';

const HOSTILE = '<b>bold</b> & =1+1 \u202Egnp.exe \u001b[31m 中 Größe 5 °C';
const runs = [
  ...[53.1, 53.5, 53.6, 53.8, 54.3].map((soakTimeS) => trialRun(soakTimeS)),
  trialRun(60, { decision: { kind: 'set-aside', reason: HOSTILE } }),
];
const folder = mkdtempSync(join(tmpdir(), 'dwellwright-pdf-'));
const typeface = typefaceFiles();

async function written(
  name: string,
  input: Parameters<typeof trialReport>[0],
  paper: 'LETTER' | 'A4',
): Promise<string> {
  const path = join(folder, name);
  writeFileSync(path, await reportPdf(trialReport(input), { typeface, paper }));
  return path;
}

/** What one of Poppler's programs prints of a file: a reader of PDF that shares nothing with the writer. */
const says = (program: string, ...args: readonly string[]): string =>
  spawnSync(program, args, { encoding: 'utf8' }).stdout.replace(/\s+/g, ' ');

describe.skipIf(poppler.missing)(`the report as a PDF${poppler.why}`, () => {
  let letter = '';
  let a4 = '';
  beforeAll(async () => {
    letter = await written('letter.pdf', trialReportInput(runs), 'LETTER');
    a4 = await written('a4.pdf', trialReportInput(runs, { job: { simulated: true }, text: HOSTILE }), 'A4');
  });

  // Paper sizes in points: ANSI Letter 8.5 × 11 in = 612 × 792; ISO 216 A4 210 × 297 mm = 595.28 × 841.89.
  it('is Letter or A4, has no script, and is about five pages', () => {
    const [one, other] = [says('pdfinfo', letter), says('pdfinfo', a4)];
    expect(one).toContain('Page size: 612 x 792 pts (letter)');
    expect(other).toMatch(/Page size: 595\.28 x 841\.89 pts \(A4\)/);
    for (const info of [one, other]) {
      expect(info).toContain('JavaScript: no');
      expect(Number(/Pages: (\d+)/.exec(info)?.[1])).toBeGreaterThanOrEqual(4);
      expect(Number(/Pages: (\d+)/.exec(info)?.[1])).toBeLessThanOrEqual(7);
    }
    expect(one).toContain('Title: Heat-soak trial: Assembly WB-212 on press North');
  });

  it('holds the typeface itself, so that it looks the same everywhere', () => {
    const fonts = spawnSync('pdffonts', [letter], { encoding: 'utf8' }).stdout.trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThanOrEqual(2);
    // Columns: name, type (may have a space), encoding, embedded, subset, unicode.
    for (const font of fonts)
      expect(font).toMatch(/SourceSans3-\w+\s+CID TrueType\s+Identity-H\s+yes yes yes/);
  });

  it('says the dwell by both rules, the runs, degrees and minus signs as text that can be searched', () => {
    const text = says('pdftotext', '-layout', letter, '-');
    for (const words of [
      '174 s',
      '175 s',
      '350 °F (176.7 °C)',
      'Soak time, s',
      '0'.repeat(32),
      'Signatures',
      'Target 350 °F',
    ])
      expect(text).toContain(words);
    expect(text).not.toContain('SIMULATED');
    // By JCGM 100: the budget's total is stated with ±.
    expect(text).toMatch(/Soak time [\d.]+ s ± [\d.]+ s \(95 %\)/);
  });

  it('numbers its pages: each says which of how many', () => {
    const pages = Number(/Pages: (\d+)/.exec(says('pdfinfo', letter))?.[1]);
    for (let page = 1; page <= pages; page++) {
      expect(says('pdftotext', '-f', String(page), '-l', String(page), letter, '-')).toContain(
        `Page ${page} of ${pages}`,
      );
    }
  });

  it('says SIMULATED on every page of a simulated trial', () => {
    const pages = Number(/Pages: (\d+)/.exec(says('pdfinfo', a4))?.[1]);
    for (let page = 1; page <= pages; page++) {
      expect(says('pdftotext', '-f', String(page), '-l', String(page), a4, '-')).toContain('SIMULATED');
    }
  });

  it('prints hostile text as it stands, and what the typeface lacks as its number', () => {
    const text = says('pdftotext', a4, '-');
    expect(text).toContain(
      'Set aside because: <b>bold</b> & =1+1 \\u{202E}gnp.exe \\x1B[31m \\u{4E2D} Größe 5 °C',
    );
  });

  it('breaks a name of 150 letters without a space inside the margins', async () => {
    const long = await written(
      'long.pdf',
      trialReportInput(runs.slice(0, 2), { text: 'W'.repeat(150) }),
      'LETTER',
    );
    const words = spawnSync('pdftotext', ['-bbox', long, '-'], {
      encoding: 'utf8',
      maxBuffer: 1 << 26,
    }).stdout;
    const rights = [...words.matchAll(/xMax="([\d.]+)"/g)].map((match) => Number(match[1]));
    expect(rights.length).toBeGreaterThan(100);
    // Letter is 612 points wide, the right margin 50.
    expect(Math.max(...rights)).toBeLessThanOrEqual(612 - 50 + 1);
  });

  it('draws charts as lines, not as pixels', () => {
    expect(says('pdfimages', '-list', letter).trim()).toMatch(/^page num type.*-+ ?-*$/);
  });
});

describe('a PDF of the same content', () => {
  it('is the same to the last byte', async () => {
    const content = trialReport(trialReportInput(runs));
    const [one, other] = [
      await reportPdf(content, { typeface, paper: 'A4' }),
      await reportPdf(content, { typeface, paper: 'A4' }),
    ];
    expect(Buffer.compare(Buffer.from(one), Buffer.from(other))).toBe(0);
  });
});
