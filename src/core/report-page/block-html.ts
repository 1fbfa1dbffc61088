import { escapeMarkup } from '../figure/escape-markup.ts';
import { pictureSvg } from '../figure/picture-svg.ts';
import type { DwellsBlock, FactsBlock, ReportBlock, TableBlock } from '../report/ReportContent.ts';
import { REPORT_TEXT } from '../text/report-text.ts';

/** A word that no column of a table has room for: it may break anywhere, all others only where words break. */
const LONG_WORD = /\S{25,}/u;

/** One block of a report as HTML; `nextId` gives each picture an id of its own. */
export function blockHtml(block: ReportBlock, nextId: () => string): string {
  switch (block.kind) {
    case 'facts':
      return factsHtml(block);
    case 'table':
      return tableHtml(block);
    case 'dwells':
      return dwellsHtml(block);
    case 'paragraphs':
      return block.lines.map((line) => `<p>${escapeMarkup(line)}</p>`).join('\n');
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${escapeMarkup(item)}</li>`).join('')}</ul>`;
    case 'figure':
      return `<figure>${pictureSvg(block.picture, { idPrefix: nextId() })}<figcaption>${escapeMarkup(block.caption)}</figcaption></figure>`;
    case 'signatures':
      return `<div class="signatures">${block.roles.map(signatureHtml).join('')}</div>`;
  }
}

function factsHtml({ facts }: FactsBlock): string {
  const rows = facts.map(({ name, value }) =>
    value === ''
      ? `<dt>${escapeMarkup(name)}</dt><dd class="blank"></dd>`
      : `<dt>${escapeMarkup(name)}</dt><dd>${escapeMarkup(value)}</dd>`,
  );
  return `<dl>${rows.join('\n')}</dl>`;
}

function tableHtml({ columns, rows }: TableBlock): string {
  const classes = columns.map(({ align, wide, code }) =>
    [align === 'right' ? 'right' : '', wide ? 'wide' : '', code ? 'code' : ''].filter(Boolean).join(' '),
  );
  const attribute = (index: number, cell: string) => {
    const all = [classes[index] ?? '', LONG_WORD.test(cell) ? 'long' : ''].filter(Boolean).join(' ');
    return all === '' ? '' : ` class="${all}"`;
  };
  const head = columns.map(
    ({ heading, align }) => `<th scope="col"${headClass(heading, align)}>${escapeMarkup(heading)}</th>`,
  );
  const body = rows.map(
    ({ cells, leftOut }) =>
      `<tr${leftOut ? ' class="out"' : ''}>${cells.map((cell, index) => `<td${attribute(index, cell)}>${escapeMarkup(cell)}</td>`).join('')}</tr>`,
  );
  return `<div class="table"><table><thead><tr>${head.join('')}</tr></thead><tbody>${body.join('\n')}</tbody></table></div>`;
}

function headClass(heading: string, align: 'left' | 'right'): string {
  const all = [align === 'right' ? 'right' : '', LONG_WORD.test(heading) ? 'long' : ''].filter(Boolean);
  return all.length === 0 ? '' : ` class="${all.join(' ')}"`;
}

function dwellsHtml({ dwells }: DwellsBlock): string {
  const boxes = dwells.map(
    ({ name, value, worth }) =>
      `<div class="dwell"><h3>${escapeMarkup(capital(name))}</h3><p class="value">${escapeMarkup(value)}</p>${worth.map((line) => `<p class="worth">${escapeMarkup(capital(line))}</p>`).join('')}</div>`,
  );
  return `<div class="dwells">${boxes.join('\n')}</div>`;
}

function signatureHtml(role: string): string {
  return `<div class="signature"><p class="role">${escapeMarkup(role)}</p><div class="line"></div><p>${REPORT_TEXT.signatureLine}</p><div class="line"></div><p>${REPORT_TEXT.dateLine}</p></div>`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
