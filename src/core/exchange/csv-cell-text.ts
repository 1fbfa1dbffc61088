import { neutralise } from '../text/neutralise.ts';

/** A spreadsheet's cell holds 32,767 characters. */
const LONGEST = 32_000;
/** What a spreadsheet may take for the start of a formula, also as wide letters and after spaces; the apostrophe itself. */
const FORMULA_START = /(^|;)(?=\s*['=+\-@\uFF1D\uFF0B\uFF0D\uFF20])/g;

/**
 * Text of people, readers and files as a cell of a CSV file: controls are made visible, and a text that a spreadsheet
 * could run as a formula gets an apostrophe in front, which makes it text. A text that begins with an apostrophe gets one
 * too, so that taking one leading apostrophe off always gives the text back. The same after each semicolon, where some
 * spreadsheets begin a new cell.
 */
export const csvCellText = (text: string): string =>
  neutralise(text, { longest: LONGEST }).replace(FORMULA_START, "$1'");
