/** A typeface to be put inside a page or picture: WOFF2 files in base 64. */
export interface EmbeddedTypeface {
  readonly name: string;
  readonly regularWoff2: string;
  readonly boldWoff2: string;
}

/** Style rules that hold the typeface itself. */
export function fontFaces({ name, regularWoff2, boldWoff2 }: EmbeddedTypeface): string {
  const face = (weight: number, data: string) =>
    `@font-face{font-family:'${name}';font-weight:${weight};src:url(data:font/woff2;base64,${data}) format('woff2')}\n`;
  return face(400, regularWoff2) + face(600, boldWoff2);
}
