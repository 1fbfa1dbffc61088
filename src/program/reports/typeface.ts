import { readFileSync } from 'node:fs';
import module from 'node:module';
import type { TypefaceFiles } from '../../adapters/pdf/TypefaceFiles.ts';
import type { EmbeddedTypeface } from '../../core/figure/EmbeddedTypeface.ts';
import { TYPEFACE } from '../../core/figure/picture-svg.ts';

const require = module.createRequire(import.meta.url);

/** TrueType files of the typeface, for the PDF and for PNG. */
export function typefaceFiles(): TypefaceFiles {
  const from = '@expo-google-fonts/source-sans-3';
  return {
    name: TYPEFACE,
    regular: require.resolve(`${from}/400Regular/SourceSans3_400Regular.ttf`),
    bold: require.resolve(`${from}/600SemiBold/SourceSans3_600SemiBold.ttf`),
  };
}

/** The same typeface (Latin letters, figures and signs) to be put inside a page or an SVG. */
export function pageTypeface(): EmbeddedTypeface {
  const woff2 = (weight: 400 | 600) =>
    readFileSync(
      require.resolve(`@fontsource/source-sans-3/files/source-sans-3-latin-${weight}-normal.woff2`),
    ).toString('base64');
  return { name: TYPEFACE, regularWoff2: woff2(400), boldWoff2: woff2(600) };
}
