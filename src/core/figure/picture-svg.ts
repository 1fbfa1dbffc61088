import { type EmbeddedTypeface, fontFaces } from './EmbeddedTypeface.ts';
import { escapeMarkup } from './escape-markup.ts';
import type { PathShape, Picture, Shape, TextShape } from './Picture.ts';

/** Typeface of every picture and page; embedded where they are shown. */
export const TYPEFACE = 'Source Sans 3';

export interface PictureSvgOptions {
  /** Keeps the ids of several pictures on one page apart. */
  readonly idPrefix?: string;
  /** True for a file of its own (width, height, white ground), false inside a page. */
  readonly alone?: boolean;
  /** Put inside a file of its own, so that it looks the same everywhere. */
  readonly typeface?: EmbeddedTypeface;
}

/** A picture as SVG: no scripts, no links, nothing fetched; all text escaped. */
export function pictureSvg(
  picture: Picture,
  { idPrefix = 'p', alone = false, typeface }: PictureSvgOptions = {},
): string {
  const { width, height } = picture;
  const size = alone ? ` width="${width}" height="${height}"` : '';
  let clips = 0;
  const clipId = () => `${idPrefix}-clip-${++clips}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}"${size} role="img" font-family="'${TYPEFACE}', sans-serif" aria-label="${escapeMarkup(`${picture.title}. ${picture.description}`)}">`,
    `<title>${escapeMarkup(picture.title)}</title>`,
    `<desc>${escapeMarkup(picture.description)}</desc>`,
    ...(typeface === undefined ? [] : [`<style>${fontFaces(typeface)}</style>`]),
    ...(alone ? [`<path d="M0 0H${width}V${height}H0Z" fill="#ffffff"/>`] : []),
    ...picture.shapes.map((shape) => shapeSvg(shape, clipId)),
    '</svg>',
  ].join('\n');
}

function shapeSvg(shape: Shape, clipId: () => string): string {
  if (shape.kind === 'path') return pathSvg(shape);
  if (shape.kind === 'text') return textSvg(shape);
  const id = clipId();
  const { left, top, width, height } = shape.box;
  return [
    `<clipPath id="${id}"><rect x="${left}" y="${top}" width="${width}" height="${height}"/></clipPath>`,
    `<g clip-path="url(#${id})">`,
    ...shape.shapes.map((inner) => shapeSvg(inner, clipId)),
    '</g>',
  ].join('\n');
}

function pathSvg({ d, stroke, strokeWidth = 1, dash, fill = 'none' }: PathShape): string {
  const line =
    stroke === undefined
      ? ''
      : ` stroke="${stroke}" stroke-width="${strokeWidth}" stroke-linejoin="round"${dash === undefined ? '' : ` stroke-dasharray="${dash.join(' ')}"`}`;
  return `<path d="${d}" fill="${fill}"${line}/>`;
}

function textSvg({ x, y, text, size, anchor, bold = false, fill = INK, turned }: TextShape): string {
  const turn = turned === undefined ? '' : ` transform="rotate(${turned} ${x} ${y})"`;
  const weight = bold ? ' font-weight="600"' : '';
  return `<text x="${round(x)}" y="${round(y)}" font-size="${size}" text-anchor="${anchor}" fill="${fill}"${weight}${turn}>${escapeMarkup(text)}</text>`;
}

/** Colour of text and of what matters most. */
export const INK = '#1a1a1a';

const round = (value: number): number => Math.round(value * 100) / 100;
