import { Resvg } from '@resvg/resvg-js';

/** An SVG as PNG of the given width in pixels, with the given typeface only, so that it looks the same everywhere. */
export function picturePng(
  svg: string,
  {
    widthPx,
    fontFiles,
    typeface,
  }: { readonly widthPx: number; readonly fontFiles: readonly string[]; readonly typeface: string },
): Uint8Array {
  const drawn = new Resvg(svg, {
    fitTo: { mode: 'width', value: widthPx },
    background: '#ffffff',
    font: { loadSystemFonts: false, fontFiles: [...fontFiles], defaultFontFamily: typeface },
  });
  return drawn.render().asPng();
}
