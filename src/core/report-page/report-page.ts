import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { type EmbeddedTypeface, fontFaces } from '../figure/EmbeddedTypeface.ts';
import { escapeMarkup } from '../figure/escape-markup.ts';
import type { ReportContent, ReportSection } from '../report/ReportContent.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { blockHtml } from './block-html.ts';
import { PAGE_STYLE } from './page-style.ts';

/**
 * The report as one page of HTML that needs nothing else: no script, no link, nothing fetched, and a content
 * security policy that allows only its own style and typeface, by hash. Every text is escaped.
 */
export function reportPage(content: ReportContent, typeface: EmbeddedTypeface | null = null): string {
  const style = `${typeface === null ? '' : fontFaces(typeface)}${runningMark(content)}${PAGE_STYLE}`;
  const policy = `default-src 'none'; style-src '${styleHash(style)}'; font-src data:; base-uri 'none'; form-action 'none'`;
  let figures = 0;
  const nextId = () => `figure-${++figures}`;
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="referrer" content="no-referrer">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeMarkup([content.title, content.subtitle].join(': '))}</title>`,
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    '<main>',
    headHtml(content),
    ...content.sections.map((section, index) => sectionHtml(section, index + 1, nextId)),
    footHtml(content),
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function headHtml({ title, subtitle, simulated, reference, madeAt, program }: ReportContent): string {
  return [
    ...(simulated
      ? [
          `<p class="simulated"><strong>${REPORT_TEXT.simulated}</strong> <span>${escapeMarkup(REPORT_TEXT.simulatedWhy)}</span></p>`,
        ]
      : []),
    '<header>',
    `<h1>${escapeMarkup(title)}</h1>`,
    `<p class="subtitle">${escapeMarkup(subtitle)}</p>`,
    `<p class="made">${[reference, REPORT_TEXT.madeBy(program, madeAt)]
      .filter((part) => part !== '')
      .map(escapeMarkup)
      .join('<br>')}</p>`,
    '</header>',
  ].join('\n');
}

function sectionHtml({ heading, blocks }: ReportSection, number: number, nextId: () => string): string {
  const id = `section-${number}`;
  return [
    `<section aria-labelledby="${id}">`,
    `<h2 id="${id}">${escapeMarkup(heading)}</h2>`,
    ...blocks.map((block) => blockHtml(block, nextId)),
    '</section>',
  ].join('\n');
}

function footHtml({ reference, program, madeAt }: ReportContent): string {
  const parts = [reference, REPORT_TEXT.madeBy(program, madeAt)].filter((part) => part !== '');
  return `<footer><p>${parts.map(escapeMarkup).join(' · ')}</p></footer>`;
}

/** On paper: page numbers at the foot, and SIMULATED at the head of every page where it is so. */
function runningMark({ simulated }: ReportContent): string {
  const mark = simulated
    ? `@top-center{content:'${REPORT_TEXT.simulated}';font:600 13pt sans-serif;color:#a3161a}`
    : '';
  return `@page{margin:17mm 15mm 19mm;@bottom-right{content:'Page ' counter(page) ' of ' counter(pages);font:8.5pt sans-serif;color:#555}${mark}}\n`;
}

function styleHash(style: string): string {
  return `sha256-${btoa(String.fromCharCode(...sha256(utf8ToBytes(style))))}`;
}
