import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeMarkup } from '../../../src/core/figure/escape-markup.ts';
import type { Picture } from '../../../src/core/figure/Picture.ts';
import { pictureSvg } from '../../../src/core/figure/picture-svg.ts';
import { neutralise } from '../../../src/core/text/neutralise.ts';

const decoded = (markup: string): string =>
  markup
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
const hostile = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.constantFrom(
    '<script>alert(1)</script>',
    '"/><img src=x onerror=alert(1)>',
    ']]>',
    '&lt;b&gt;',
    '\u202Etxt.exe',
    '\u001b[2J',
    "' onload='x",
  ),
);

describe('text in markup', () => {
  it('of any text holds no character of markup, and reads back as what neutralise shows', () => {
    fc.assert(
      fc.property(hostile, (text) => {
        const markup = escapeMarkup(text);
        expect(markup).not.toMatch(/[<>"']/);
        expect(markup).not.toMatch(/&(?!amp;|lt;|gt;|quot;|#39;)/);
        expect(markup).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
        expect(decoded(markup)).toBe(neutralise(text, { longest: 4000 }));
      }),
      { numRuns: 500 },
    );
  });
});

describe('a picture as SVG', () => {
  const picture = (text: string): Picture => ({
    width: 100,
    height: 50,
    title: text,
    description: text,
    shapes: [
      { kind: 'text', x: 1, y: 2, text, size: 12, anchor: 'start' },
      {
        kind: 'clipped',
        box: { left: 0, top: 0, width: 10, height: 10 },
        shapes: [{ kind: 'path', d: 'M0 0h1', stroke: '#000000' }],
      },
    ],
  });

  it('has the same tags whatever its texts say', () => {
    const tags = (svg: string) => svg.match(/<\/?[a-zA-Z][^\s>]*/g);
    const plain = tags(pictureSvg(picture('run'), { alone: true }));
    fc.assert(
      fc.property(hostile, (text) => {
        expect(tags(pictureSvg(picture(text), { alone: true }))).toEqual(plain);
      }),
    );
  });

  it('keeps the ids of two pictures on one page apart', () => {
    const ids = ['a', 'b'].flatMap(
      (idPrefix) => pictureSvg(picture('x'), { idPrefix }).match(/ id="[^"]*"/g) ?? [],
    );
    expect(ids).toHaveLength(2);
    expect(new Set(ids).size).toBe(2);
  });
});
