import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { trialReport } from '../../../src/core/report/trial-report.ts';
import { reportPage } from '../../../src/core/report-page/report-page.ts';
import { trialReportInput } from '../report/trial-report-input.ts';
import { trialRun } from '../trial/trial-run.ts';

const runs = [53.1, 53.5, 54.3].map((soakTimeS) => trialRun(soakTimeS));
const face = { name: 'Source Sans 3', regularWoff2: 'AAAA', boldWoff2: 'BBBB' };
const page = reportPage(trialReport(trialReportInput(runs)), face);

describe('the report as a page', () => {
  // Content Security Policy Level 3, 2.3.1 and 6.7.2: hash sources are base 64 of the element's text.
  it('allows its own style by hash, its own typeface, and nothing else', () => {
    const style = /<style>([\s\S]*?)<\/style>/.exec(page)?.[1] ?? '';
    const hash = createHash('sha256').update(style, 'utf8').digest('base64');
    expect(page).toContain(
      `content="default-src 'none'; style-src 'sha256-${hash}'; font-src data:; base-uri 'none'; form-action 'none'"`,
    );
  });

  it('holds no script, no link, no handler, no style attribute and no address but the name of SVG', () => {
    expect(page).not.toMatch(/<(?:script|link|iframe|object|embed|img|image|a|form|base)\b/i);
    expect(page).not.toMatch(/<[^>]*\s(?:on\w+|style|href|src)\s*=/i);
    expect([...new Set(page.match(/https?:[^"'\s<>)]*/g))]).toEqual(['http://www.w3.org/2000/svg']);
  });

  it('has the same tags whatever readers, files and people wrote', () => {
    const tags = (text: string) =>
      reportPage(
        trialReport(
          trialReportInput([...runs, trialRun(60, { decision: { kind: 'set-aside', reason: text } })], {
            text,
          }),
        ),
        face,
      )
        .replace(/<style>[\s\S]*?<\/style>/, '')
        .match(/<\/?[a-zA-Z][^\s>]*/g);
    const plain = tags('plain');
    for (const text of [
      '<script>alert(1)</script>',
      '"><svg onload=alert(1)>',
      '</style><script>alert(1)</script>',
      '</title><script>1</script>',
      '&lt;script&gt;',
      '\u202E<b>',
    ]) {
      expect(tags(text)).toEqual(plain);
    }
  });

  it('says SIMULATED large at the top and at the head of every printed page, only when it is', () => {
    const simulated = reportPage(trialReport(trialReportInput(runs, { job: { simulated: true } })), face);
    expect(simulated).toMatch(/<p class="simulated"><strong>SIMULATED<\/strong>/);
    expect(simulated).toContain("@top-center{content:'SIMULATED'");
    expect(page).not.toContain('SIMULATED');
  });

  it('is written in English, has one heading of the first order, and a section for each of the content', () => {
    expect(page).toContain('<html lang="en">');
    expect(page.match(/<h1>/g)).toHaveLength(1);
    expect(page.match(/<section aria-labelledby=/g)).toHaveLength(11);
    expect(page.match(/<svg [^>]*role="img"/g)).toHaveLength(4);
  });
});
