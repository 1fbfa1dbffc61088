/** TrueType files of the typeface that goes into every PDF. */
export interface TypefaceFiles {
  readonly name: string;
  readonly regular: string;
  readonly bold: string;
}
